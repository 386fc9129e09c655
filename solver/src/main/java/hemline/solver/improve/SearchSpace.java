package hemline.solver.improve;

import hemline.shared.geometry.Box;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.SearchLimits;
import hemline.shared.units.NumberText;
import hemline.shared.units.QuantityRange;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The lips that a search may try, by what its user said; what is left out is as the start has it.
 *
 * @param limits what can be built
 * @param space lips to look among
 */
public record SearchSpace(ShapeLimits limits, LipSpace space) {
  /** How far a corner moves where nothing is said, m. */
  public static final double USUAL_REACH = 2e-3;

  /** Teeth or pockets where nothing is said. */
  public static final int USUAL_NUMBER = 3;

  private static final int MOST_NUMBER = 12;

  /** Largest outline, m. */
  private static final double MOST_OUTLINE = 1;

  /**
   * The space of a search.
   *
   * @param said by the user
   * @param start lip to be better than, as drawn
   * @param profile the same, resolved
   * @param problems get what is wrong; the place of each is its key, such as width
   * @return null after a problem
   */
  public static @Nullable SearchSpace of(
      SearchLimits said, LipDrawing start, LipProfile profile, List<Problem> problems) {
    int before = problems.size();
    Box box = Box.around(profile.bodies());
    double width = length("width", said.sizes().width(), box.width(), MOST_OUTLINE, problems);
    double height = length("height", said.sizes().height(), box.top(), MOST_OUTLINE, problems);
    double room = Math.min(width, height);
    if (problems.size() > before) {
      return null;
    }
    if (room < ShapeLimits.USUAL_WALL
        && (said.sizes().wall() == null || said.sizes().slot() == null)) {
      problem(
          problems,
          width < height ? "width" : "height",
          NumberText.millimetres(room)
              + " leave no room for walls and slots of "
              + NumberText.millimetres(ShapeLimits.USUAL_WALL)
              + "; allow more, or say which wall and slot can be printed");
      return null;
    }
    double wall = length("wall", said.sizes().wall(), ShapeLimits.USUAL_WALL, room, problems);
    double slot = length("slot", said.sizes().slot(), ShapeLimits.USUAL_WALL, room, problems);
    if (problems.size() > before) {
      return null;
    }
    ShapeLimits limits = new ShapeLimits(width, height, wall, slot);
    LipSpace space =
        said.family().name() == null
            ? ofCorners(said, start, problems)
            : ofFamily(said, said.family().name(), limits, problems);
    return space == null || problems.size() > before ? null : new SearchSpace(limits, space);
  }

  private static double length(
      String key, @Nullable Double said, double usual, double most, List<Problem> problems) {
    double length = said == null ? usual : said;
    if (!(length > 0) || length > most) {
      problem(
          problems,
          key,
          "must be above 0 and at most "
              + NumberText.millimetres(most)
              + ", got "
              + NumberText.millimetres(length));
    }
    return length;
  }

  private static @Nullable LipSpace ofCorners(
      SearchLimits said, LipDrawing start, List<Problem> problems) {
    if (!said.family().vary().isEmpty()) {
      problem(problems, "vary", "lengths belong to a family; name one too, such as teeth");
    }
    double reach = length("reach", said.corners().reach(), USUAL_REACH, MOST_OUTLINE, problems);
    List<Integer> moving =
        said.corners().moving() == null ? CornerSpace.free(start) : said.corners().moving();
    int n = start.body().vertices().size();
    for (int corner : moving) {
      if (corner < 0 || corner >= n) {
        problem(problems, "corners", "the outline has corners 0 to " + (n - 1) + ", got " + corner);
        return null;
      }
    }
    if (moving.isEmpty() || moving.stream().distinct().count() < moving.size()) {
      problem(problems, "corners", "name each corner once, at least one, such as 0,1");
      return null;
    }
    String lopsided = said.corners().symmetric() ? MirroredSpace.fault(start) : "";
    if (!lopsided.isEmpty()) {
      problem(
          problems,
          "symmetric",
          "the lip to begin with must be alike from both sides, but " + lopsided);
    }
    if (!problems.isEmpty()) {
      return null;
    }
    return said.corners().symmetric()
        ? new MirroredSpace(start, moving, reach)
        : new CornerSpace(start, moving, reach);
  }

  private static @Nullable LipSpace ofFamily(
      SearchLimits said, String name, ShapeLimits limits, List<Problem> problems) {
    if (said.corners().moving() != null) {
      problem(problems, "corners", "corners are those of the lip; leave them out with a family");
    }
    int number = said.family().number() == null ? USUAL_NUMBER : said.family().number();
    if (number < 1 || number > MOST_NUMBER) {
      problem(problems, "number", "1 to " + MOST_NUMBER + " teeth or pockets, got " + number);
      return null;
    }
    LipFamily family =
        Arrays.stream(LipFamily.values()).filter(f -> f.key().equals(name)).findAny().orElse(null);
    if (family == null) {
      problem(
          problems,
          "family",
          "\""
              + name
              + "\" is unknown; take one of "
              + Arrays.stream(LipFamily.values())
                  .map(LipFamily::key)
                  .collect(Collectors.joining(", ")));
      return null;
    }
    String fault = family.fault(number, limits);
    if (!fault.isEmpty()) {
      problem(problems, "width", fault);
      return null;
    }
    if (said.corners().symmetric() && !family.symmetric()) {
      problem(
          problems,
          "symmetric",
          "a " + family.key() + " looks to one side; leave symmetric out, or take another family");
    }
    List<NamedLength> lengths = new ArrayList<>(family.within(number, limits));
    said.family().vary().forEach((length, range) -> narrow(lengths, length, range, problems));
    return family.space(number, limits, lengths, said.corners().symmetric());
  }

  private static void narrow(
      List<NamedLength> lengths, String name, QuantityRange range, List<Problem> problems) {
    for (int i = 0; i < lengths.size(); i++) {
      if (lengths.get(i).name().equals(name)) {
        lengths.set(i, new NamedLength(name, range.low(), range.high()));
        return;
      }
    }
    problem(
        problems,
        "vary",
        "\""
            + name
            + "\" is no length of this family; write one of "
            + lengths.stream().map(NamedLength::name).collect(Collectors.joining(", "))
            + ", such as pitch=2mm..5mm");
  }

  private static void problem(List<Problem> problems, String key, String text) {
    problems.add(new Problem("improve.limits", key, text));
  }
}
