package hemline.viewer.cli;

import hemline.shared.file.LoadedLip;
import hemline.shared.geometry.Box;
import hemline.shared.problem.InputException;
import hemline.shared.units.Quantities;
import hemline.shared.units.QuantityKind;
import hemline.shared.units.QuantityRange;
import hemline.solver.improve.CornerSpace;
import hemline.solver.improve.LipFamily;
import hemline.solver.improve.LipSpace;
import hemline.solver.improve.NamedLength;
import hemline.solver.improve.ShapeLimits;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options that say among which lips a search looks, and what can be built. */
final class ShapeOptions {
  private static final double MOST_OUTLINE = 1;

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
      defaultValue = "3",
      description = "Teeth or pockets of a family, 1 to 12 (default: ${DEFAULT-VALUE}).")
  int number = 3;

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
      defaultValue = "2mm",
      description = "How far a corner moves to either side at most (default: ${DEFAULT-VALUE}).")
  String reach = "2mm";

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
      defaultValue = "0.8mm",
      description = "Least wall that prints (default: ${DEFAULT-VALUE}, common practice).")
  String wall = "0.8mm";

  @Option(
      names = "--slot",
      paramLabel = "Q",
      defaultValue = "0.8mm",
      description = "Least slot that stays open in print (default: ${DEFAULT-VALUE}).")
  String slot = "0.8mm";

  /** What can be built; limits left out are those of the lip. */
  ShapeLimits limits(@Nullable LoadedLip lip, Wanted wanted) {
    Box box = lip == null ? new Box(0, 0, 8e-3, 10e-3) : Box.around(lip.profile().bodies());
    double w = wanted.outline("--width", width, box.width(), MOST_OUTLINE);
    double h = wanted.outline("--height", height, box.top(), MOST_OUTLINE);
    return new ShapeLimits(
        w,
        h,
        wanted.outline("--wall", wall, ShapeLimits.USUAL_WALL, Math.min(w, h)),
        wanted.outline("--slot", slot, ShapeLimits.USUAL_WALL, Math.min(w, h)));
  }

  /** Lips to look among; null after a problem. */
  @Nullable LipSpace space(@Nullable LoadedLip lip, ShapeLimits limits, Wanted wanted) {
    if (number < 1 || number > 12) {
      wanted.fault("--number", "1 to 12 teeth or pockets, got " + number);
      return null;
    }
    return family == null ? corners(lip, wanted) : ofFamily(limits, wanted);
  }

  private @Nullable LipSpace corners(@Nullable LoadedLip lip, Wanted wanted) {
    if (!vary.isEmpty()) {
      wanted.fault("--vary", "lengths belong to a family; add --family, such as --family teeth");
    }
    double far = wanted.outline("--reach", reach, 2e-3, MOST_OUTLINE);
    if (lip == null) {
      return null;
    }
    int n = lip.drawing().body().vertices().size();
    List<Integer> moving = corners == null ? CornerSpace.free(lip.drawing()) : corners;
    for (int corner : moving) {
      if (corner < 0 || corner >= n) {
        wanted.fault("--corners", "the outline has corners 0 to " + (n - 1) + ", got " + corner);
        return null;
      }
    }
    if (moving.isEmpty() || moving.stream().distinct().count() < moving.size()) {
      wanted.fault("--corners", "name each corner once, at least one, such as --corners 0,1");
      return null;
    }
    return new CornerSpace(lip.drawing(), moving, far);
  }

  private @Nullable LipSpace ofFamily(ShapeLimits limits, Wanted wanted) {
    if (corners != null) {
      wanted.fault("--corners", "corners are those of PROFILE; leave them out with --family");
    }
    LipFamily asked =
        wanted.choice("--family", String.valueOf(family), LipFamily.values(), LipFamily::key);
    String fault = asked.fault(number, limits);
    if (!fault.isEmpty()) {
      wanted.fault("--width, --height", fault);
      return null;
    }
    List<NamedLength> lengths = new ArrayList<>(asked.within(number, limits));
    for (String one : vary) {
      vary(one, lengths, wanted);
    }
    return asked.space(number, limits, lengths);
  }

  private static void vary(String text, List<NamedLength> lengths, Wanted wanted) {
    String[] parts = text.split("=", 2);
    String name = parts[0].strip();
    for (int i = 0; i < lengths.size(); i++) {
      if (lengths.get(i).name().equals(name) && parts.length == 2) {
        try {
          QuantityRange range = Quantities.readRange(QuantityKind.LENGTH, "--vary", parts[1]);
          if (range.high() > range.low()) {
            lengths.set(i, new NamedLength(name, range.low(), range.high()));
          } else {
            wanted.fault("--vary", "the limits of " + name + " must rise, such as 2mm..5mm");
          }
        } catch (InputException e) {
          wanted.addAll(e);
        }
        return;
      }
    }
    wanted.fault(
        "--vary",
        "\""
            + text
            + "\" is no length with its limits; write one of "
            + lengths.stream().map(NamedLength::name).collect(Collectors.joining(", "))
            + " as pitch=2mm..5mm");
  }
}
