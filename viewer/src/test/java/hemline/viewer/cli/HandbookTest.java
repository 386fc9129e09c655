package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.viewer.format.Libraries;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** What goes with an installed program names every command, option and library. */
class HandbookTest {
  @TempDir Path dir;

  @Test
  void everyCommandOptionAndLibraryIsNamed() throws Exception {
    Handbook.main(new String[] {dir.resolve("handbook").toString()});
    String page = Files.readString(dir.resolve("handbook/hemline.1"));
    String completions = Files.readString(dir.resolve("handbook/hemline.bash"));
    String notice = Files.readString(dir.resolve("handbook/NOTICE"));
    assertThat(Handbook.commandLine().getSubcommands()).containsKeys("rank", "batch", "view");
    for (CommandLine command : Handbook.commandLine().getSubcommands().values()) {
      assertThat(page).contains("\n.SS " + command.getCommandName() + "\n");
      for (OptionSpec option : command.getCommandSpec().options()) {
        assertThat(page).contains(option.longestName().replace("-", "\\-"));
        assertThat(completions).contains(option.longestName());
      }
    }
    assertThat(page).doesNotContain("${").doesNotContain("\n'").contains("burst");
    for (Libraries.Library library : Libraries.all()) {
      assertThat(notice)
          .contains(library.name() + " " + library.version() + ": " + library.licence());
    }
    assertThat(notice).contains("taken under EDL-1.0").contains("Classpath exception");
  }
}
