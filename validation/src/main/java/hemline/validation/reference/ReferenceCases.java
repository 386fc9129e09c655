package hemline.validation.reference;

import hemline.shared.file.DuctFile;
import hemline.shared.file.LipFile;
import hemline.shared.fluid.FluidState;
import hemline.shared.problem.InputException;
import hemline.shared.section.DuctSection;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.validation.reference.ExpectedFigure.Comparison;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The cases that come with the program.
 *
 * <p>The table {@code cases/index.csv} names the folders and the class of their flows. A folder
 * holds:
 *
 * <ul>
 *   <li>{@code cases.csv}: case, title, proves, covers, kind (duct, lip, computed or ratio), and
 *       where they differ from the rule mesh (medium), fast (no), file (case.json) and, for a lip,
 *       gap (m), suction (Pa), groundSpeed, spanwiseSpeed (m/s), density (kg/m³),
 *       kinematicViscosity (m²/s), closure (auto; sst+sa adds the distance between both to the
 *       bands; for a duct that of its file), for a ratio the two cases of and to;
 *   <li>the duct and lip files;
 *   <li>{@code expected.csv}: case, quantity, reference, referenceUncertainty, relativeTolerance,
 *       and where they differ from the rule scale (the reference), comparison (within), reason,
 *       source, provenance and grade (those of {@code expected.md}), knownLimit (see {@link
 *       KnownLimit}) with limitError, the measured error over the size of the reference, and
 *       limitStatus, unsteady where the flow is known not to settle;
 *   <li>{@code expected.md}: paragraphs that begin with Source:, Provenance:, Grade: and Reason:;
 *   <li>{@code profiles.csv}, where there are any: case, line, table, place, value, source, and
 *       where needed parts (places are multiples of 1/parts, printed rounded) and except (a place
 *       left out).
 * </ul>
 */
public final class ReferenceCases {
  private static final String ROOT = "cases/";

  private ReferenceCases() {}

  /** All cases, folder by folder in the order of their tables. */
  public static List<ReferenceCase> all() {
    List<ReferenceCase> all = new ArrayList<>();
    for (CitedRow folder : index()) {
      all.addAll(in(folder.text("folder"), FlowClass.of(folder.text("class"))));
    }
    return all;
  }

  /**
   * The cases of one folder.
   *
   * @throws IllegalArgumentException when there is no such folder
   */
  public static List<ReferenceCase> in(String folder) {
    for (CitedRow row : index()) {
      if (row.text("folder").equals(folder)) {
        return in(folder, FlowClass.of(row.text("class")));
      }
    }
    throw new IllegalArgumentException("there is no folder of cases named " + folder);
  }

  /**
   * A case by its name.
   *
   * @throws IllegalArgumentException when there is none
   */
  public static ReferenceCase named(String name) {
    return all().stream()
        .filter(one -> one.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("there is no case named " + name));
  }

  private static List<CitedRow> index() {
    return CitedTable.rows(Resource.text(ROOT + "index.csv"), "index");
  }

  private static List<ReferenceCase> in(String folder, FlowClass flow) {
    CitedTable table = CitedTable.read(ROOT + folder + "/expected");
    Map<String, List<ExpectedFigure>> expected = new LinkedHashMap<>();
    for (CitedRow row : table.rows()) {
      expected.computeIfAbsent(row.text("case"), name -> new ArrayList<>()).add(figure(row, table));
    }
    Map<String, List<ProfileReference>> profiles = profiles(folder);
    List<ReferenceCase> cases = new ArrayList<>();
    for (CitedRow row : CitedTable.rows(Resource.text(ROOT + folder + "/cases.csv"), folder)) {
      String name = row.text("case");
      List<ExpectedFigure> figures = expected.remove(name);
      if (figures == null) {
        throw new IllegalStateException(folder + "/" + name + " expects nothing");
      }
      cases.add(
          new ReferenceCase(
              folder + "/" + name,
              new ReferenceCase.Purpose(row.text("title"), row.text("proves"), row.text("covers")),
              flow,
              setup(folder, row),
              row.text("mesh", "medium"),
              row.text("fast", "no").equals("yes"),
              figures,
              profiles.getOrDefault(name, List.of())));
    }
    if (!expected.isEmpty()) {
      throw new IllegalStateException(folder + " expects figures of no case: " + expected.keySet());
    }
    return cases;
  }

  private static ExpectedFigure figure(CitedRow row, CitedTable table) {
    double reference = row.number("reference");
    String comparison = row.text("comparison", Comparison.WITHIN.key());
    for (Comparison c : Comparison.values()) {
      if (c.key().equals(comparison)) {
        return new ExpectedFigure(
            row.text("quantity"),
            new ExpectedFigure.Reference(reference, row.number("referenceUncertainty", 0)),
            new ExpectedFigure.Tolerance(
                row.number("relativeTolerance", 0),
                row.number("scale", reference == 0 ? 1 : Math.abs(reference)),
                c,
                row.text("reason", table.paragraph("Reason"))),
            new Evidence(
                row.text("source", table.citation()),
                row.text("provenance", table.paragraph("Provenance")),
                Evidence.Grade.valueOf(row.text("grade", table.paragraph("Grade")))),
            limit(row));
      }
    }
    throw new IllegalStateException(table.name() + ": there is no comparison " + comparison);
  }

  private static @Nullable KnownLimit limit(CitedRow row) {
    String reason = row.text("knownLimit", "");
    return reason.isEmpty()
        ? null
        : new KnownLimit(
            row.number("limitError"),
            reason,
            row.text("limitStatus", "converged").equals("unsteady"));
  }

  private static Map<String, List<ProfileReference>> profiles(String folder) {
    Map<String, List<ProfileReference>> profiles = new LinkedHashMap<>();
    String name = ROOT + folder + "/profiles.csv";
    if (!Resource.exists(name)) {
      return profiles;
    }
    for (CitedRow row : CitedTable.rows(Resource.text(name), name)) {
      List<ProfileReference.Point> points = new ArrayList<>();
      for (CitedRow point : CitedTable.read(row.text("table")).rows()) {
        double place = point.number(row.text("place"));
        boolean left = row.text("except", "").equals(point.text(row.text("place")));
        double parts = row.number("parts", 0);
        if (!left && point.optionalNumber(row.text("value")).isPresent()) {
          points.add(
              new ProfileReference.Point(
                  (parts > 0 ? Math.rint(parts * place) / parts : place) + row.number("shift", 0),
                  point.number(row.text("value"))));
        }
      }
      profiles
          .computeIfAbsent(row.text("case"), one -> new ArrayList<>())
          .add(new ProfileReference(row.text("line"), points, row.text("source")));
    }
    return profiles;
  }

  private static CaseSetup setup(String folder, CitedRow row) {
    String kind = row.text("kind");
    String file = row.text("file", row.text("case") + ".json");
    String path = ROOT + folder + "/" + file;
    try {
      return switch (kind) {
        case "duct" -> {
          DuctSection duct = DuctFile.parse(Resource.text(path), file);
          yield new CaseSetup.Solved(
              duct, List.of(row.text("closure", duct.closure()).split("\\+")));
        }
        case "lip" ->
            new CaseSetup.Solved(
                new SealSection(
                    LipFile.load(Resource.text(path), file).profile(),
                    row.number("gap"),
                    row.number("suction"),
                    new GroundMotion(row.number("groundSpeed", 0), row.number("spanwiseSpeed", 0)),
                    new FluidState(row.number("density"), row.number("kinematicViscosity")),
                    List.of()),
                List.of(row.text("closure", "auto").split("\\+")));
        case "computed" -> new CaseSetup.Computed(row.text("case"));
        case "ratio" -> new CaseSetup.Ratio(row.text("of"), row.text("to"));
        default -> throw new IllegalStateException(folder + ": there is no kind " + kind);
      };
    } catch (InputException e) {
      throw new IllegalStateException("a case that comes with the program is faulty", e);
    }
  }
}
