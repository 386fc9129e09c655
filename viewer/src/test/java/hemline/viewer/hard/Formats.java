package hemline.viewer.hard;

import static java.nio.charset.StandardCharsets.UTF_8;

import hemline.shared.file.CalibrationFile;
import hemline.shared.file.DuctFile;
import hemline.shared.file.DxfFile;
import hemline.shared.file.FanCurveFile;
import hemline.shared.file.LimitsFile;
import hemline.shared.file.LipFile;
import hemline.shared.file.LipImport;
import hemline.shared.file.MachineFile;
import hemline.shared.file.Seal;
import hemline.shared.file.SvgFile;
import hemline.shared.geometry.Outline;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Calibration;
import hemline.shared.result.Estimate;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.SolveStatus;
import hemline.shared.rig.Rig;
import hemline.shared.rig.RigFile;
import hemline.shared.rig.RigTemplate;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.GridFamily;
import hemline.solver.rig.Comparison;
import hemline.solver.rig.ComparisonStudy;
import hemline.solver.rig.Prediction;
import hemline.viewer.page.ComparePage;
import hemline.viewer.page.PageText;
import hemline.viewer.picture.InventedStudies;
import hemline.viewer.project.KeptResults;
import hemline.viewer.project.KeptStudy;
import hemline.viewer.project.Program;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import hemline.viewer.project.SampleSections;
import hemline.viewer.project.StudyPage;
import hemline.viewer.project.StudyStore;
import hemline.viewer.report.CompareDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Every format that the program reads: sound files of it, and how it is read. */
final class Formats {
  private static final Problem MISSING =
      new Problem("kept", "file", "counts as missing and is solved again");

  private static final Pattern SEAL = Pattern.compile("(\"seal\"\\s*:\\s*\")[0-9a-f]{64}\"");

  private final Path root;
  private final Path project;
  private final List<Format> all = new ArrayList<>();

  /** Reads a file and answers the problems told, none if it was taken. */
  interface Reader {
    List<Problem> read(Path file) throws InputException;
  }

  /**
   * A format.
   *
   * @param file where a changed file is put
   * @param sealed true if a stranger can seal it anew
   */
  record Format(String name, Path file, boolean sealed, List<byte[]> seeds, Reader reader) {}

  /**
   * Formats in a folder of their own.
   *
   * @param profiles lips and machines of the demonstration
   * @param cases duct files
   */
  Formats(Path root, Path profiles, Path cases) throws Exception {
    this.root = root;
    this.project = Files.createDirectories(root.resolve("project"));
    copy(profiles, root.resolve("profiles"));
    List<Path> lips = files(profiles, 1, ".json");
    Path machines = root.resolve("profiles/machines");
    add("lip", "lips/case.json", lips, f -> told(() -> LipFile.load(f)));
    add("duct", "ducts/case.json", files(cases, ".json"), f -> told(() -> DuctFile.read(f)));
    add(
        "machine",
        "profiles/machines/case.json",
        files(machines, ".json"),
        f -> told(() -> MachineFile.read(f)));
    add(
        "fan curve",
        "fans/case.csv",
        files(machines, ".csv"),
        f -> told(() -> FanCurveFile.read(f)));
    add(
        "limits",
        "limits/case.json",
        List.of(Path.of("examples", "leaning-fin-limits.json")),
        f -> told(() -> LimitsFile.read(f)));
    drawings(lips);
    List<Path> rigs = new ArrayList<>(files(root.resolve("profiles/rigs"), ".csv"));
    rigs.add(Files.writeString(root.resolve("template.csv"), RigTemplate.TEXT));
    add("rig", "profiles/rigs/case.csv", rigs, f -> told(() -> rig(f)));
    add(
        "project",
        "project/case.json",
        lips,
        f -> {
          ProjectFolder folder = new ProjectFolder(project);
          folder.lipFiles();
          folder.machineFiles();
          return folder.lips().problems();
        });
    kept(lips);
  }

  List<Format> all() {
    return List.copyOf(all);
  }

  private void add(String name, String file, List<Path> seeds, Reader reader) throws IOException {
    List<byte[]> bytes = new ArrayList<>();
    for (Path seed : seeds) {
      bytes.add(Files.readAllBytes(seed));
    }
    Path place = root.resolve(file);
    Files.createDirectories(place.getParent());
    all.add(new Format(name, place, false, bytes, reader));
  }

  private void addKept(String name, Path file, Reader reader) throws IOException {
    all.add(new Format(name, file, true, List.of(Files.readAllBytes(file)), reader));
  }

  private void drawings(List<Path> lips) throws Exception {
    List<Path> svg = new ArrayList<>();
    List<Path> dxf = new ArrayList<>();
    Path seeds = Files.createDirectories(root.resolve("seeds"));
    for (Path lip : lips) {
      LipProfile profile = LipFile.load(lip).profile();
      List<Outline> bodies = new ArrayList<>(List.of(profile.outline()));
      bodies.addAll(profile.detached());
      svg.add(seeds.resolve(lip.getFileName() + ".svg"));
      dxf.add(seeds.resolve(lip.getFileName() + ".dxf"));
      SvgFile.write(svg.get(svg.size() - 1), bodies, profile.name());
      DxfFile.write(dxf.get(dxf.size() - 1), bodies);
    }
    add("SVG", "drawings/case.svg", svg, f -> told(() -> LipImport.load(f)));
    add("DXF", "drawings/case.dxf", dxf, f -> told(() -> LipImport.load(f)));
  }

  private void kept(List<Path> lips) throws Exception {
    LipDrawing drawing = LipFile.read(lips.get(0));
    Program here = Program.here();
    Program gone = new Program(here.computer(), here.machine(), Integer.MAX_VALUE - 7L, null);
    ProjectFolder folder = new ProjectFolder(project);
    RescueStore crashed = new RescueStore(folder.rescue(), gone);
    crashed.putBy(
        List.of(new RescueStore.Open(drawing, Map.of(), project.resolve("mine.json"), "")),
        Instant.EPOCH);
    RescueStore now = new RescueStore(folder.rescue());
    addKept("rescue", files(folder.rescue(), ".json").get(0), f -> rescue(now));

    StudyStore studies = new StudyStore(folder.studies(), "engine");
    KeptStudy study = Kept.study(LipFile.load(lips.get(0)).profile());
    studies.keep(study);
    addKept("study", files(folder.studies(), ".json").get(0), f -> studies(studies));

    Path calibration = root.resolve("calibrations/a.calibration.json");
    Files.createDirectories(calibration.getParent());
    CalibrationFile.write(
        calibration,
        new Calibration(
            "a",
            "b",
            "c.csv",
            true,
            4,
            new Calibration.Line(0.9, 0.01, 0.02, 0.01, -0.5, 0),
            new Calibration.Range(1e-3, 2e-3, 300, 600)));
    addKept("calibration", calibration, f -> told(() -> CalibrationFile.read(f)));

    SealSection section = study.question().base();
    var sections = new StudyStore(root.resolve("sections"), "engine").sections(study.question());
    GridFamily family =
        new GridFamily(
            Closure.SST,
            List.of(Kept.grid()),
            FamilySolver.unfilled(section, MeshLevel.COARSE, Closure.SST));
    SampleSections.keep(sections, section, family);
    Path kept;
    try (Stream<Path> files = Files.walk(root.resolve("sections"))) {
      kept = files.filter(Files::isRegularFile).findFirst().orElseThrow();
    }
    addKept(
        "kept section",
        kept,
        f -> SampleSections.find(sections, section) == null ? List.of(MISSING) : List.of());

    LeakOrigin asked = SampleResults.ASKED;
    LeakPoint point = InventedStudies.LEAKS.find(asked);
    KeptResults<LeakPoint> leaks = KeptResults.leaks(root.resolve("leaks"), "engine");
    leaks.keep(asked, point);
    addKept(
        "kept leak",
        files(root.resolve("leaks"), ".json").get(0),
        f -> leaks.find(asked) == null ? List.of(MISSING) : List.of());

    RecentPlaces recent = new RecentPlaces(root.resolve("recent/recent.json"));
    recent.used(lips.get(0));
    addKept(
        "recent files",
        root.resolve("recent/recent.json"),
        f -> recent.files().isEmpty() ? List.of(MISSING) : List.of());
  }

  /** A rig, what its readings say beside a prediction that is 0.7 everywhere, and its plan. */
  private static Comparison rig(Path file) throws InputException {
    RigFile.readInstruments(file);
    Rig rig = RigFile.read(file);
    List<Prediction> predictions =
        ComparisonStudy.points(rig).stream()
            .map(
                p ->
                    new Prediction(
                        p.gap(),
                        p.suction(),
                        SolveStatus.CONVERGED,
                        new Estimate(0.7, 0.01, 0, 0.02, 0.02, Estimate.Trend.MONOTONE),
                        List.of()))
            .toList();
    Comparison comparison = ComparisonStudy.of(rig, predictions, 0.1);
    PageText.lines(ComparePage.of("a", rig, comparison, null));
    CompareDocument.text("a", rig, comparison, null, 0);
    return comparison;
  }

  private List<Problem> rescue(RescueStore store) {
    RescueStore.Left left = store.left();
    for (RescueStore.Rescued one : left.drawings()) {
      if (one.file() != null && !project.equals(one.file().getParent())) {
        throw new IllegalStateException("a drawing names " + one.file());
      }
    }
    if (left.drawings().isEmpty() && left.refused().isEmpty()) {
      return List.of(MISSING); // of a program that may run, on a process number made up
    }
    return left.refused();
  }

  private static List<Problem> studies(StudyStore store) {
    StudyStore.Kept kept = store.all();
    kept.studies().forEach(study -> PageText.lines(StudyPage.of(study)));
    return kept.refused();
  }

  /** Something that reads. */
  private interface Call {
    Object call() throws InputException;
  }

  private static List<Problem> told(Call call) throws InputException {
    call.call();
    return List.of();
  }

  /** Seals a text anew, as somebody who knows the rule can; a text without a seal stays. */
  static byte[] sealed(byte[] file) {
    String text = new String(file, UTF_8);
    try {
      return Seal.close(SEAL.matcher(text).replaceFirst("$1" + Seal.BLANK + "\"")).getBytes(UTF_8);
    } catch (IllegalArgumentException e) {
      return file;
    }
  }

  private static List<Path> files(Path folder, String ending) throws IOException {
    return files(folder, Integer.MAX_VALUE, ending);
  }

  private static List<Path> files(Path folder, int depth, String ending) throws IOException {
    try (Stream<Path> files = Files.walk(folder, depth)) {
      return files.filter(f -> f.toString().endsWith(ending)).sorted().limit(40).toList();
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.toList()) {
        Path target = to.resolve(from.relativize(file).toString());
        if (Files.isDirectory(file)) {
          Files.createDirectories(target);
        } else {
          Files.copy(file, target);
        }
      }
    }
  }
}
