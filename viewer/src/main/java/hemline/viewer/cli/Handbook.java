package hemline.viewer.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import hemline.solver.flow.CancelToken;
import hemline.solver.refine.FamilySolver;
import hemline.viewer.format.Libraries;
import hemline.viewer.format.Version;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * What goes with an installed program: its manual page, completions for a shell and notices of its
 * libraries, all made from the command line's own descriptions and lists.
 */
public final class Handbook {
  private Handbook() {}

  /**
   * Writes {@code hemline.1}, {@code hemline.bash} and {@code NOTICE}.
   *
   * @param args folder
   */
  public static void main(String[] args) throws IOException {
    Path folder = Files.createDirectories(Path.of(args[0]));
    CommandLine line = commandLine();
    Files.writeString(folder.resolve("hemline.1"), manual(line), UTF_8);
    Files.writeString(folder.resolve("hemline.bash"), AutoComplete.bash("hemline", line), UTF_8);
    Files.writeString(folder.resolve("NOTICE"), notice(), UTF_8);
  }

  static CommandLine commandLine() {
    SolverStudies studies = new SolverStudies(new FamilySolver(), false);
    Desk desk = new Desk(System.out, System.err, false, new CancelToken(), studies, () -> 0);
    return Commands.commandLine(desk, file -> {}, "");
  }

  /** Manual page in the macros of man(7). */
  static String manual(CommandLine line) {
    StringBuilder page = new StringBuilder();
    page.append(".TH HEMLINE 1 \"\" \"Hemline ").append(Version.TEXT).append("\"\n");
    page.append(".SH NAME\nhemline \\- ").append(text(first(line.getCommandSpec()))).append('\n');
    page.append(".SH SYNOPSIS\n.B hemline\n.I command\n[options]\n.SH COMMANDS\n");
    line.getSubcommands().values().forEach(one -> command(page, one.getCommandSpec()));
    page.append(".SH EXIT STATUS\n");
    page.append("0 done, 1 a result is not usable, 2 bad input, 130 cancelled.\n");
    page.append(".SH CAUTIONS\n");
    for (String caution : hemline.viewer.format.Cautions.all()) {
      page.append(text(caution)).append('\n');
    }
    return page.toString();
  }

  private static void command(StringBuilder page, CommandSpec spec) {
    page.append(".SS ").append(text(spec.name())).append('\n');
    for (String line : spec.usageMessage().description()) {
      page.append(text(line)).append('\n');
    }
    for (PositionalParamSpec one : spec.positionalParameters()) {
      item(page, one.paramLabel(), one);
    }
    for (OptionSpec one : spec.options()) {
      String value = one.arity().max() == 0 ? "" : " " + one.paramLabel();
      item(page, String.join(", ", one.names()) + value, one);
    }
  }

  private static void item(StringBuilder page, String name, ArgSpec spec) {
    String description =
        String.join(" ", spec.description())
            .replace("${DEFAULT-VALUE}", String.valueOf(spec.defaultValue()));
    page.append(".TP\n.B ").append(text(name)).append('\n');
    page.append(text(description)).append('\n');
  }

  private static String first(CommandSpec spec) {
    String[] lines = spec.usageMessage().description();
    return lines.length == 0 ? "a bench for seal lips" : String.format(lines[0]);
  }

  /** A text that the macros leave as it is. */
  private static String text(String plain) {
    String safe = plain.replace("\\", "\\e").replace("-", "\\-");
    return safe.startsWith(".") || safe.startsWith("'") ? "\\&" + safe : safe;
  }

  /** Names, versions and licences of the libraries. */
  static String notice() {
    StringBuilder notice = new StringBuilder();
    notice.append("Hemline ").append(Version.TEXT).append(", Apache-2.0.\n\n");
    notice.append("It is shipped with these libraries. Where two licences are offered the one\n");
    notice.append("chosen is named; the texts are in the folder licences, and what a library\n");
    notice.append("says of itself in a folder of its own there.\n\n");
    List<Libraries.Library> all = Libraries.all();
    for (Libraries.Library one : all) {
      notice.append(one.name()).append(' ').append(one.version()).append(": ");
      notice.append(one.licence()).append(" (").append(one.use()).append(")");
      if (one.licence().contains("EDL-1.0")) {
        notice.append("; taken under EDL-1.0, whose text is BSD-3-Clause");
      }
      notice.append('\n');
    }
    notice.append("Java runtime (OpenJDK): GPL-2.0 with Classpath exception; notices of its\n");
    notice.append("parts are in its folder legal\n");
    return notice.toString();
  }
}
