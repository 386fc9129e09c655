package hemline.viewer.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Calibration;
import hemline.shared.result.Termination;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Properties;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The words of notices. */
class NoticeWordsTest {
  private static final int MOST = 12;

  private static Properties table() throws Exception {
    Properties words = new Properties();
    try (var in =
        new InputStreamReader(
            NoticeWords.class.getResourceAsStream("notices.properties"), StandardCharsets.UTF_8)) {
      words.load(in);
    }
    return words;
  }

  /** Values that the words of a key show, those of words inside them too. */
  private static TreeSet<String> shown(Properties table, String key) {
    TreeSet<String> values = new TreeSet<>();
    Matcher place = Pattern.compile("\\{([^}:]+)[^}]*}").matcher(table.getProperty(key));
    while (place.find()) {
      String what = place.group(1);
      if (what.matches("[a-z]|[0-9]([,/][0-9])?|each")) {
        Collections.addAll(values, what.split("[,/]"));
      } else {
        values.addAll(shown(table, what));
      }
      if (place.group().endsWith(":ending}")) {
        for (Termination.Reason reason : Termination.Reason.values()) {
          values.addAll(shown(table, "ending." + reason.key()));
        }
      }
    }
    return values;
  }

  private static TreeSet<String> values(NoticeKind kind) {
    for (int names = 0; names < MOST; names++) {
      for (int numbers = 0; numbers < MOST; numbers++) {
        if (kind.takes(names, numbers)) {
          TreeSet<String> all = new TreeSet<>();
          IntStream.range(0, names).forEach(k -> all.add(Character.toString('a' + k)));
          IntStream.range(0, numbers).forEach(k -> all.add(Integer.toString(k)));
          return all;
        }
      }
    }
    throw new AssertionError(kind + " takes no values");
  }

  @ParameterizedTest
  @EnumSource
  void everyKindHasWordsThatShowAllItsValues(NoticeKind kind) throws Exception {
    assertThat(table().getProperty(kind.name())).isNotBlank();
    TreeSet<String> shown = shown(table(), kind.name());
    if (kind.takes(1, 1) && kind.takes(2, 2)) {
      assertThat(shown).contains("each").isSubsetOf("each", "a");
    } else {
      assertThat(shown).isEqualTo(values(kind));
    }
  }

  /** No words are left over: each key is a kind or stands in other words. */
  @Test
  void allWordsAreUsed() throws Exception {
    Properties table = table();
    TreeSet<String> used = new TreeSet<>();
    Stream.of(NoticeKind.values()).forEach(kind -> used.add(kind.name()));
    Stream.of(Termination.Reason.values()).forEach(reason -> used.add("ending." + reason.key()));
    Matcher inside = Pattern.compile("\\{([a-z]{2,})}").matcher(table.values().toString());
    while (inside.find()) {
      used.add(inside.group(1));
    }
    assertThat(table.stringPropertyNames()).isEqualTo(used);
  }

  static Stream<Arguments> sentences() {
    return Stream.of(
        arguments(
            NoticeKind.REGIME_SPANNED.of(1499.6, 500, 3000),
            "The gap Reynolds number of 1500 lies in the transition band, 500 to 3000: the flow may"
                + " be laminar or turbulent, and the bands span both."),
        arguments(
            NoticeKind.CALIBRATION_RANKED.of(
                "rig", 1.12, 0.05, -0.081, 0.068, 4, 1e-3, 2e-3, 200, 600, 0),
            "C_d and leak are calibrated by rig: C_d times 1.120 \u00b1 0.05, less 0.081 \u00b1 0.068,"
                + " 4 points, gaps 1 mm to 2 mm, 200 Pa to 600 Pa"),
        arguments(
            NoticeKind.REGIME_REACHED.of(1500, 500, 3000, 0.784),
            "The gap Reynolds number of 1500 lies in the transition band, 500 to 3000: the flow may"
                + " be laminar or turbulent, and the bands reach 78 % of the way to the other"
                + " answer."),
        arguments(
            NoticeKind.FLOW_UNSTEADY.of("cycling", 37, 0.001, -0.05),
            "No steady flow was found on the finest grid, the iteration cycles every 37 passes:"
                + " figures are means over the last passes, in which the leak moved by \u00b12.0 %."),
        arguments(
            NoticeKind.FLOW_UNSTEADY.of("wandering", 0, 0, 0),
            "No steady flow was found on the finest grid, the iteration wanders without a period:"
                + " figures are means over the last passes, in which the leak moved by \u00b10.0 %."),
        arguments(
            NoticeKind.FLOW_UNSTEADY.of("FLOW_UNSTEADY", 0, 0, 0),
            "No steady flow was found on the finest grid, the iteration FLOW_UNSTEADY: figures are"
                + " means over the last passes, in which the leak moved by ±0.0 %."),
        arguments(
            NoticeKind.JET_MACH.of(0.391, 0.0544),
            "The jet reaches Mach 0.39, beyond the incompressible assumption: expansion of the air"
                + " cuts the leak by about 5.4 %, which is not in the figures."),
        arguments(
            NoticeKind.FLOW_TWO_FOUND.of(0.9586, Double.NaN),
            "The finest grid holds two steady flows: one with a discharge coefficient of 0.959,"
                + " found from the coarser grids, one with NaN, found from rest. The figures are"
                + " those of the first, their bands reach over both."),
        arguments(
            NoticeKind.SOLVE_NO_FLOW.of(3),
            "No usable flow was found on any of 3 grids. Try another mesh level or closure, or check"
                + " the profile."),
        arguments(
            NoticeKind.SOLVE_BROKEN.of("a {b} costs $1 \\ 2"),
            "The solve broke off: a {b} costs $1 \\ 2."),
        arguments(
            NoticeKind.GRIDS_DETAILS.of(3, 2.5e-5, 4e-3, 0),
            "The grids leave out 3 details of an outline, below 0.025 mm, at (4, 0) mm and"
                + " elsewhere: no cell could show it. No wall moves by more than that, gap and width"
                + " not at all; the drawing stays."),
        arguments(
            NoticeKind.MANY_TRANSITION.of(4, 6, 1e-3, 2e-3),
            "In 4 of 6 sections (gaps 1 mm to 2 mm) the gap Reynolds number lies in the transition"
                + " band, where a flow may be laminar or turbulent."),
        arguments(
            NoticeKind.MANY_MACH.of(6, 6, 1e-3, 1e-3),
            "In all 6 sections (gap 1 mm) the jet is fast enough for the air's expansion to count."),
        arguments(
            NoticeKind.RANKING_GAPS_MISSING.of(List.of("teeth", "teeth"), 1e-3, 2.5e-3),
            "teeth is judged without the gap 1 mm, 2.5 mm, where it cannot be compared with the"
                + " baseline."),
        arguments(
            NoticeKind.RANKING_CANCELLED.of(List.of("flat", "flat", "teeth"), 1e-3, 2e-3, 1e-3),
            "The study was stopped before flat at 1 mm, 2 mm; teeth at 1 mm was solved."),
        arguments(
            NoticeKind.RANKING_SWAP.of(List.of("teeth", "flat"), 2.412e-3),
            "teeth and flat may swap places near 2.4 mm, but not beyond the bands on both sides."),
        arguments(
            NoticeKind.LEAK_TRANSITION.of(800.4, 1600, 500, 3000),
            "The gap Reynolds number of 800 to 1600 lies in the transition band, 500 to 3000: the"
                + " leak may be laminar or turbulent. The bands reach towards both where a solved section"
                + " lies in that band too."),
        arguments(
            NoticeKind.LEAK_TRANSITION.of(800.1, 800.2, 500, 3000),
            "The gap Reynolds number of 800 lies in the transition band, 500 to 3000: the leak may"
                + " be laminar or turbulent. The bands reach towards both where a solved section lies in that"
                + " band too."),
        arguments(
            NoticeKind.FAN_NEAR_STALL.of(0.1),
            "The fan works within 10 % of its stall: a smaller gap may push it over."),
        arguments(
            NoticeKind.HOLD_THIN.of(0.98e-4),
            "A gap of 0.098 mm is thinner than the contact allowance or any solved section: no hold"
                + " is shown."),
        arguments(
            NoticeKind.POWER_TOGETHER.of(133.93, 130),
            "Fan and drive at full power take 134 W together, more than the 130 W the battery gives:"
                + " no hold is shown."),
        arguments(
            NoticeKind.LIP_THIN.of("", 2, 0.7e-3, 0, 0.8e-3).about("teeth"),
            "teeth: the wall near corner 2 at (0.7, 0) mm is thinner than 0.8 mm, which few printers"
                + " hold; make it thicker if it is to be printed"),
        arguments(
            NoticeKind.LIP_NARROW.of("detached[0]", 2, 0.7e-3, 0, 0.4e-3),
            "the slot near detached[0] corner 2 at (0.7, 0) mm is narrower than 0.4 mm and may close"
                + " in print; make it wider"),
        arguments(
            NoticeKind.DXF_SKIPPED.of("SPLINE", 2),
            "2 SPLINE passed over; turn curves into arcs or polylines and break up blocks"),
        arguments(
            NoticeKind.RIG_TEMPERATURE_UNREAD.of(5, 293.15),
            "the temperature was not read; it is taken as known within \u00b1 5 \u00b0C about 20"
                + " \u00b0C"),
        arguments(
            NoticeKind.RIG_TEMPERATURE_UNSURE.of(5),
            "the temperature has no accuracy; it is taken as known within \u00b1 5 \u00b0C"),
        arguments(
            NoticeKind.RIG_BAROMETER_UNREAD.of(3000, 101325),
            "the barometer was not read; it is taken as known within \u00b1 30 hPa about 1013 hPa"));
  }

  @ParameterizedTest
  @MethodSource("sentences")
  void aNoticeIsSaidInASentence(Notice notice, String sentence) {
    assertThat(NoticeWords.of(notice)).isEqualTo(sentence);
  }

  private static Calibration calibration(boolean invented, int points, double offset) {
    return new Calibration(
        "lip",
        "abc",
        "rig.csv",
        invented,
        points,
        new Calibration.Line(1.0234, 0.0123, offset, offset / 10, 0, 0),
        new Calibration.Range(1e-3, 3e-3, 300, 12e3));
  }

  @Test
  void aCalibrationIsNamedWithWhatItIsMadeOf() {
    Notice used = calibration(false, 5, 0).notice(NoticeKind.CALIBRATION_USED);
    assertThat(NoticeWords.of(used))
        .isEqualTo(
            "C_d and leak are calibrated by rig.csv: C_d times 1.023 \u00b1 0.024, 5 points, gaps"
                + " 1 mm to 3 mm, 300 Pa to 12 kPa.");
    Notice beyond = calibration(true, 1, 0.02).notice(NoticeKind.CALIBRATION_BEYOND);
    assertThat(NoticeWords.of(beyond))
        .isEqualTo(
            "C_d and leak are calibrated by rig.csv (invented readings): C_d times 1.023 \u00b1"
                + " 0.024, plus 0.0200 \u00b1 0.0039, 1 point, gaps 1 mm to 3 mm, 300 Pa to 12 kPa;"
                + " this section lies outside of that, so both bands count.");
    Notice ranked = calibration(false, 5, 0).notice(NoticeKind.CALIBRATION_RANKED);
    assertThat(NoticeWords.of(ranked.about("teeth")))
        .isEqualTo("teeth: " + NoticeWords.of(used).replaceAll("\\.$", ""));
  }

  @Test
  void eachEndingHasItsOwnWords() {
    assertThat(
            Stream.of(Termination.Reason.values())
                .map(reason -> NoticeKind.FLOW_UNSTEADY.of(reason.key(), 37, 1e-4, 0.05))
                .map(NoticeWords::of))
        .doesNotHaveDuplicates()
        .anyMatch(words -> words.contains("the iteration cycles every 37 passes:"));
  }

  @Test
  void aLimitIsAReasonToo() {
    assertThat(NoticeWords.reason(NoticeKind.POWER_MOTOR.of(62.5, 60)))
        .isEqualTo("the fan takes 62.5 W electrical, more than the 60 W its motor bears");
    assertThat(NoticeWords.reason(NoticeKind.HOLD_VALVE.of()))
        .isEqualTo("the relief valve is at its stop");
  }

  @Test
  void noNoticeIsNoSentence() {
    assertThat(NoticeWords.of((Notice) null)).isEmpty();
    assertThat(NoticeWords.of(new ArrayList<Notice>())).isEmpty();
  }

  @Test
  void aNoticeWithOtherValuesThanItsKindIsNone() {
    assertThatThrownBy(() -> NoticeKind.JET_MACH.of(0.3))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("JET_MACH");
    assertThatThrownBy(() -> NoticeKind.RANKING_UNSTEADY.of(List.of("flat", "teeth"), 1e-3))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> NoticeKind.RANKING_UNSTEADY.of())
        .isInstanceOf(IllegalArgumentException.class);
  }
}
