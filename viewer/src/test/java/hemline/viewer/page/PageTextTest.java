package hemline.viewer.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.viewer.page.Page.Tone;
import java.util.List;
import org.junit.jupiter.api.Test;

final class PageTextTest {

  @Test
  void columnsLineUpAndEndWithoutBlanks() {
    PageTable table =
        PageTable.of("rank", "lip", "leak", "help")
            .details(1)
            .row("1", "plain flat", "1.25", "a")
            .group("worse")
            .row("12", "\u0393", "", "b");
    assertThat(PageText.lines(new Page("lips").table(table)))
        .containsExactly(
            "lips",
            "",
            "  rank  lip         leak",
            "     1  plain flat  1.25",
            "worse",
            "    12  \u0393");
  }

  @Test
  void aTableTooWideForTheLineGoesOnBelowWithItsFirstColumn() {
    String wide = "w".repeat(60);
    PageTable table = PageTable.of("lip", "a", "b").folds().row("flat", wide, wide);
    assertThat(PageText.lines(new Page("lips").table(table)))
        .containsExactly(
            "lips", "", "  lip   a", "  flat  " + wide, "", "  lip   b", "  flat  " + wide);
  }

  @Test
  void wordsAreSignedByWhatTheyAreAndDetailsLeftOut() {
    Page page =
        new Page("t")
            .quiet("q")
            .heading("h")
            .plain("word ".repeat(22))
            .text("beware", Tone.CAUTION)
            .details()
            .plain("long story")
            .everywhere()
            .toKnow(List.of("mind"));
    assertThat(PageText.lines(page))
        .containsExactly(
            "t",
            "q",
            "",
            "h",
            "  " + "word ".repeat(19).strip(),
            "    word word word",
            "  ! beware",
            "",
            "To know",
            "  - mind");
    assertThat(PageHtml.of(page)).contains("long story", "<p class=\"caution\">beware</p>");
  }

  @Test
  void tooManyCellsAreRefused() {
    PageTable table = PageTable.of("a");
    assertThatThrownBy(() -> table.row("a", "b")).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void columnsOfNumbersAreKnown() {
    PageTable table =
        PageTable.of("", "", "", "", "")
            .row("2 mm", "+1.2 %", "1e\u22125", "plain flat 8", "1 \u00b1 0.2")
            .row("-", "\u22120.3 %", "1.2e7", "8", "");
    assertThat(table.numbers()).containsExactly(true, true, true, false, false);
  }
}
