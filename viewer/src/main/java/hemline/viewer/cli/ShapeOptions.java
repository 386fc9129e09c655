package hemline.viewer.cli;

import hemline.shared.file.LimitsFile;
import hemline.shared.file.LoadedLip;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.profile.SearchLimits;
import hemline.shared.units.Quantities;
import hemline.shared.units.QuantityKind;
import hemline.shared.units.QuantityRange;
import hemline.solver.improve.SearchSpace;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options that say among which lips a search looks, and what can be built. */
final class ShapeOptions {
  @Option(
      names = "--limits",
      paramLabel = "FILE",
      description = {
        "File of limits (hemline.limits/1); what the options below say counts before it.",
      })
  @Nullable Path file;

  @Option(
      names = "--family",
      paramLabel = "NAME",
      description = {
        "Look among lips of a family: flat, teeth, pockets, nose or hook (default: move the"
            + " corners",
        "of PROFILE)."
      })
  @Nullable String family;

  @Option(
      names = "--number",
      paramLabel = "N",
      description = "Teeth or pockets of a family, 1 to 12 (default: 3).")
  @Nullable Integer number;

  @Option(
      names = "--vary",
      paramLabel = "NAME=Q..Q",
      description = {
        "Limits of a length of the family, such as pitch=2mm..5mm; may be repeated",
        "(default: what box and printer leave)."
      })
  List<String> vary = new ArrayList<>();

  @Option(
      names = "--corners",
      paramLabel = "N,N...",
      split = ",",
      description = "Corners of PROFILE that may move (default: all but the ends of the mount).")
  @Nullable List<Integer> corners;

  @Option(
      names = "--reach",
      paramLabel = "Q",
      description = "How far a corner moves to either side at most (default: 2mm).")
  @Nullable String reach;

  @Option(
      names = "--symmetric",
      description = "Keep the lip alike from ambient and from the plenum.")
  boolean symmetric;

  @Option(
      names = "--width",
      paramLabel = "Q",
      description = "Widest outline (default: that of PROFILE).")
  @Nullable String width;

  @Option(
      names = "--height",
      paramLabel = "Q",
      description = "Highest outline, mount to lowest point (default: that of PROFILE).")
  @Nullable String height;

  @Option(
      names = "--wall",
      paramLabel = "Q",
      description = "Least wall that prints (default: 0.8mm, common practice).")
  @Nullable String wall;

  @Option(
      names = "--slot",
      paramLabel = "Q",
      description = "Least slot that stays open in print (default: 0.8mm).")
  @Nullable String slot;

  /** What may be tried; null after a problem. */
  @Nullable SearchSpace space(@Nullable LoadedLip lip, Wanted wanted) {
    SearchLimits filed = SearchLimits.NONE;
    if (file != null) {
      try {
        filed = LimitsFile.read(file);
      } catch (InputException e) {
        wanted.addAll(e);
        return null;
      }
    }
    Map<String, QuantityRange> ranges = new LinkedHashMap<>(filed.family().vary());
    vary.forEach(text -> vary(text, ranges, wanted));
    SearchLimits said =
        new SearchLimits(
            new SearchLimits.Sizes(
                length("--width", width, filed.sizes().width(), wanted),
                length("--height", height, filed.sizes().height(), wanted),
                length("--wall", wall, filed.sizes().wall(), wanted),
                length("--slot", slot, filed.sizes().slot(), wanted)),
            new SearchLimits.Family(
                family == null ? filed.family().name() : family,
                number == null ? filed.family().number() : number,
                ranges),
            new SearchLimits.Corners(
                corners == null ? filed.corners().moving() : corners,
                length("--reach", reach, filed.corners().reach(), wanted),
                symmetric || filed.corners().symmetric()));
    if (lip == null) {
      return null;
    }
    List<Problem> problems = new ArrayList<>();
    SearchSpace space = SearchSpace.of(said, lip.drawing(), lip.profile(), problems);
    problems.forEach(p -> wanted.fault(place(p.place()), p.text()));
    return space;
  }

  /** Where a user said it: the option if it is given, else the file. */
  private String place(String key) {
    boolean option =
        switch (key) {
          case "width" -> width != null;
          case "height" -> height != null;
          case "wall" -> wall != null;
          case "slot" -> slot != null;
          case "family" -> family != null;
          case "number" -> number != null;
          case "vary" -> !vary.isEmpty();
          case "corners" -> corners != null;
          case "reach" -> reach != null;
          default -> symmetric;
        };
    return option || file == null ? "--" + key : file + ", key " + key;
  }

  private static @Nullable Double length(
      String option, @Nullable String text, @Nullable Double filed, Wanted wanted) {
    return text == null ? filed : wanted.length(option, text);
  }

  private static void vary(String text, Map<String, QuantityRange> ranges, Wanted wanted) {
    String[] parts = text.split("=", 2);
    if (parts.length < 2) {
      wanted.fault(
          "--vary", "\"" + text + "\" is no length with its limits, such as pitch=2mm..5mm");
      return;
    }
    try {
      ranges.put(parts[0].strip(), Quantities.readRange(QuantityKind.LENGTH, "--vary", parts[1]));
    } catch (InputException e) {
      wanted.addAll(e);
    }
  }
}
