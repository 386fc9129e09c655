package hemline.shared.problem;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.shared.file.LipFile;
import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipResolver;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class PlainTextTest {
  private static final String FLAT =
      "{\"schema\": \"hemline.lip/1\", \"name\": \"%s\", \"notes\": \"%s\","
          + " \"outline\": [[0, 0], [8, 0], [8, 10], [0, 10]]}";

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\u001b[2J",
        "a\u202eb",
        "\u2066x",
        "a\ufffe",
        "a\uffff",
        "\ud800",
        "a\u0000",
        "\u0085",
        "a\u2028b",
        "\u200f"
      })
  void whatCannotBeSeenIsMarkedAndRefusedInNames(String text) throws Exception {
    assertThat(PlainText.shown(text)).contains("\ufffd").isNotEqualTo(text);
    assertThat(PlainText.shown(PlainText.shown(text))).isEqualTo(PlainText.shown(text));
    assertThat(PlainText.faultOfName(text)).contains("cannot be seen");
    assertThat(new Problem("c", text, text).toString()).doesNotContain(text);
    DrawnOutline box =
        new DrawnOutline(
            List.of(
                new Vertex(0, 0),
                new Vertex(8e-3, 0),
                new Vertex(8e-3, 1e-2),
                new Vertex(0, 1e-2)));
    LipDrawing drawing = new LipDrawing(text, "", "", false, "", box, 2, List.of());
    assertThat(LipResolver.check(drawing).problems().get(0).place()).isEqualTo("name");
    String escaped =
        text.codePoints()
            .mapToObj(c -> c < 0x10000 ? String.format("\\u%04x", c) : Character.toString(c))
            .reduce("", String::concat);
    for (String file : List.of(FLAT.formatted(escaped, ""), FLAT.formatted("a", escaped))) {
      assertThatThrownBy(() -> LipFile.parse(file, "f.json"))
          .hasMessageContaining("f.json")
          .hasMessageContaining("cannot be seen");
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"a\u202eb", "\u0007", "two\nlines"})
  void anyTextCanBeMadeAName(String text) {
    for (String any :
        List.of(text, text.repeat(200), "\ud83d\ude80".repeat(200), "x".repeat(999))) {
      assertThat(PlainText.faultOfName(PlainText.asName(any))).isEmpty();
    }
  }

  @Test
  void honestTextsPass() throws Exception {
    String all = "flat \u00fc\u7b46\ud83d\ude80 =1+2, \u201cx\u201d 8\u00a0mm";
    assertThat(PlainText.shown(all)).isSameAs(all);
    assertThat(PlainText.faultOfName(all)).isEmpty();
    assertThat(PlainText.faultOfText("two\nlines\tand\r\na tab")).isEmpty();
    assertThat(PlainText.faultOfName("two\nlines")).contains("U+000A");
    assertThat(LipFile.parse(FLAT.formatted(all, "two\\nlines"), "f").name()).isEqualTo(all);
    assertThat(PlainText.faultOfName("n".repeat(PlainText.LONGEST_NAME))).isEmpty();
    assertThat(PlainText.faultOfName("n".repeat(PlainText.LONGEST_NAME + 1))).contains("longer");
  }
}
