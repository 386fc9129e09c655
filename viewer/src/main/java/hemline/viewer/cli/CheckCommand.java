package hemline.viewer.cli;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Spelling;
import hemline.shared.result.SolveStatus;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.reference.ReferenceCases;
import hemline.validation.run.CaseResult;
import hemline.viewer.page.CheckPage;
import hemline.viewer.page.PageHtml;
import hemline.viewer.page.PageText;
import hemline.viewer.report.CheckCsv;
import hemline.viewer.report.CheckDocument;
import hemline.viewer.report.ResultFolder;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Solves flows with known answers and lays the figures beside them. */
@Command(
    name = "check",
    description = "Solve flows with known answers and compare.",
    customSynopsis = {
      "hemline check [CASE...] [options]",
      "       hemline check --list",
    },
    sortOptions = false,
    mixinStandardHelpOptions = true)
final class CheckCommand extends Job {
  @Parameters(
      arity = "0..*",
      paramLabel = "CASE",
      description = "Case such as cavity/re1000, or group such as cavity; all when left out.")
  List<String> names = new ArrayList<>();

  @Option(
      names = "--fast",
      negatable = true,
      description = "Only the cases that every build runs, or only the others.")
  @Nullable Boolean fast;

  @Option(names = "--list", description = "List the cases and what they prove; solve nothing.")
  boolean list;

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "Cases running at once; results do not depend on it (default: all cores).")
  int threads = Runtime.getRuntime().availableProcessors();

  @Mixin OutputOptions output = new OutputOptions();

  CheckCommand(Desk desk) {
    super(desk);
  }

  @Override
  int work() throws InputException {
    Wanted wanted = new Wanted();
    List<ReferenceCase> cases = chosen(wanted);
    int workers = wanted.threads("--threads", threads);
    if (list && output.json) {
      wanted.fault("--json", "goes with figures; --list prints a table and solves nothing");
    }
    wanted.check();
    if (list) {
      print(PageText.lines(CheckPage.list(cases)));
      return ExitCode.DONE;
    }
    ResultFolder folder = output.folder(null);
    long start = desk.clock().getAsLong();
    List<CaseResult> results =
        watched(progress -> desk.studies().check(cases, workers, desk.cancel(), progress));
    return finish(results, folder, desk.secondsSince(start));
  }

  private List<ReferenceCase> chosen(Wanted wanted) {
    List<ReferenceCase> all = ReferenceCases.all();
    for (String name : names) {
      if (all.stream().noneMatch(one -> named(one, name))) {
        TreeSet<String> known = new TreeSet<>();
        all.forEach(
            one -> {
              known.add(one.name());
              known.add(group(one));
            });
        String near = Spelling.nearest(name, known);
        wanted.fault(
            "CASE",
            "there is no case or group \""
                + name
                + "\""
                + (near == null
                    ? "; hemline check --list names them"
                    : "; did you mean " + near + "?"));
      }
    }
    return all.stream()
        .filter(one -> names.isEmpty() || names.stream().anyMatch(name -> named(one, name)))
        .filter(one -> fast == null || fast == one.fast())
        .toList();
  }

  private static boolean named(ReferenceCase one, String name) {
    return one.name().equals(name) || group(one).equals(name);
  }

  private static String group(ReferenceCase one) {
    return one.name().substring(0, one.name().indexOf('/'));
  }

  private int finish(List<CaseResult> results, @Nullable ResultFolder folder, double seconds) {
    List<CaseResult> done =
        results.stream().filter(r -> r.status() != SolveStatus.CANCELLED).toList();
    boolean complete = done.size() == results.size();
    if (!complete) {
      tell("stopped on request; " + done.size() + " of " + results.size() + " cases were solved.");
    }
    String document = CheckDocument.text(done, complete, seconds);
    if (output.json) {
      print(document);
    } else {
      print(PageText.lines(CheckPage.of(done)));
      effort(done.size() + " cases", seconds);
    }
    int code = ExitCode.CANCELLED;
    if (complete) {
      boolean met = done.stream().allMatch(CaseResult::ok);
      code = met ? ExitCode.DONE : ExitCode.NOT_USABLE;
    }
    if (folder != null) {
      folder.write("check.json", document);
      folder.write("check.csv", CheckCsv.of(done));
      folder.write("check.html", () -> PageHtml.bytes(CheckPage.of(done)));
      return tellFiles(folder, "Files", output.json, code);
    }
    if (!output.json) {
      print(List.of("Add --out DIR for the page with plots and the tables."));
    }
    return code;
  }
}
