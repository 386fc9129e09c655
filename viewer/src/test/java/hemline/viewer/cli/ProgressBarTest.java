package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

final class ProgressBarTest {

  @Test
  void lineTellsShareTimeLeftAndWork() {
    String line = ProgressBar.line(0.25, 10, "knife fin, gap 2 mm");
    assertThat(line).hasSize(79).contains(" 25 %").contains("30 s left").contains("knife fin");
    assertThat(ProgressBar.line(0.01, 100, "x")).doesNotContain("left");
    assertThat(ProgressBar.line(0.5, 600, "x")).contains("10 min left");
    assertThat(ProgressBar.line(0.5, 1, "a".repeat(200) + "\n")).hasSize(79).endsWith("…");
  }

  @Test
  void barIsThriftyNeverGoesBackAndWipesItself() {
    AtomicLong now = new AtomicLong();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ProgressBar bar =
        new ProgressBar(new PrintStream(bytes, true, StandardCharsets.UTF_8), now::get);
    bar.progress(0.5, "a");
    bar.progress(0.6, "b");
    now.addAndGet(200_000_000L);
    bar.progress(0.4, "c");
    bar.close();
    now.addAndGet(200_000_000L);
    bar.progress(0.9, "d");
    String text = bytes.toString(StandardCharsets.UTF_8);
    assertThat(text).contains(" 50 %").contains(" 60 %").doesNotContain(" 40 %");
    assertThat(text).doesNotContain(" 90 %").endsWith("\r");
  }

  @Test
  void closingAnUnusedBarPrintsNothing() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    new ProgressBar(new PrintStream(bytes, true, StandardCharsets.UTF_8), () -> 0L).close();
    assertThat(bytes.size()).isZero();
  }
}
