package hemline.validation.reference;

import hemline.shared.file.DuctFile;
import hemline.shared.problem.InputException;
import hemline.shared.section.DuctSection;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The cases that come with the program.
 *
 * <p>A folder of cases holds duct files and a table {@code expected} with the columns case,
 * quantity, reference, referenceUncertainty and relativeTolerance, and its source beside it; the
 * table {@code cases/index.csv} names the folders.
 */
public final class ReferenceCases {
  private static final String ROOT = "cases/";

  private ReferenceCases() {}

  /** All cases, folder by folder in the order of their tables. */
  public static List<ReferenceCase> all() {
    List<ReferenceCase> all = new ArrayList<>();
    List<List<String>> folders = CommaText.parse(Resource.text(ROOT + "index.csv"));
    for (List<String> folder : folders.subList(1, folders.size())) {
      all.addAll(in(folder.get(0)));
    }
    return all;
  }

  /**
   * The cases of one folder.
   *
   * @throws IllegalArgumentException when there is no such folder
   */
  public static List<ReferenceCase> in(String folder) {
    CitedTable table = CitedTable.read(ROOT + folder + "/expected");
    Map<String, List<ExpectedFigure>> expected = new LinkedHashMap<>();
    for (CitedRow row : table.rows()) {
      expected
          .computeIfAbsent(row.text("case"), name -> new ArrayList<>())
          .add(
              new ExpectedFigure(
                  row.text("quantity"),
                  row.number("reference"),
                  row.number("referenceUncertainty"),
                  row.number("relativeTolerance")));
    }
    List<ReferenceCase> cases = new ArrayList<>();
    expected.forEach(
        (name, figures) ->
            cases.add(
                new ReferenceCase(
                    folder + "/" + name,
                    section(folder + "/" + name + ".json"),
                    figures,
                    table.citation())));
    return cases;
  }

  private static DuctSection section(String path) {
    try {
      return DuctFile.parse(Resource.text(ROOT + path), path);
    } catch (InputException e) {
      throw new IllegalStateException("a case that comes with the program is faulty", e);
    }
  }
}
