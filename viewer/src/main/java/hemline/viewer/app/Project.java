package hemline.viewer.app;

import hemline.shared.file.LipFile;
import hemline.shared.file.LoadedLip;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipFindings;
import hemline.shared.profile.LipResolver;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.SectionResult;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.ResultStore;
import hemline.viewer.model.LipDocument;
import hemline.viewer.model.Shelf;
import hemline.viewer.model.StudyDesk;
import hemline.viewer.model.Workbench;
import hemline.viewer.project.KeptResults;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import hemline.viewer.project.StudyStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/** The project that is open: its folder, the file on the bench, its studies. */
public final class Project {
  /** Time that a drawing gets to be written when the window closes, s. */
  private static final long LONGEST_END = 3;

  private final Workbench bench;
  private final Examples examples;
  private final ReadOnlyObjectWrapper<ProjectFolder> folder;
  private final RecentPlaces recent;
  private final LipDocument document;
  private @Nullable StudyDesk studies;
  private final Shelf shelf;
  private final SectionFamily family;
  private final Function<Path, RescueStore> rescues;
  private final Supplier<String> engine;
  private final ResultStore<LeakPoint> leaks;

  /** Puts drawings by, so that the screen does not wait for a slow drive. */
  private final ExecutorService writer = beside("hemline-putting-by");

  /** Lists kept studies, for the same reason. */
  private final ExecutorService reader = beside("hemline-kept-studies");

  private static ExecutorService beside(String name) {
    return Executors.newSingleThreadExecutor(
        work -> {
          Thread thread = new Thread(work, name);
          thread.setDaemon(true);
          return thread;
        });
  }

  /**
   * A project.
   *
   * @param start its folder; it need not exist yet
   * @param recent files used last
   * @param rescues store of unsaved drawings in a folder
   * @param leaks sections of machines solved before
   * @param engine tells the fingerprint of the solver, asked at the first study
   */
  public Project(
      Workbench bench,
      Examples examples,
      SectionFamily family,
      Path start,
      RecentPlaces recent,
      Function<Path, RescueStore> rescues,
      ResultStore<LeakPoint> leaks,
      Supplier<String> engine) {
    this.bench = bench;
    this.examples = examples;
    this.family = family;
    this.recent = recent;
    this.rescues = rescues;
    this.leaks = leaks;
    this.engine = engine;
    folder = new ReadOnlyObjectWrapper<>(new ProjectFolder(start));
    document =
        new LipDocument(
            bench,
            rescues.apply(folder().rescue()),
            recent,
            Clock.systemUTC(),
            writer,
            javafx.application.Platform::runLater);
    shelf = new Shelf(bench, this::stored, Reading::beside);
  }

  public Workbench bench() {
    return bench;
  }

  public SectionFamily family() {
    return family;
  }

  public ProjectFolder folder() {
    return folder.get();
  }

  public RecentPlaces recent() {
    return recent;
  }

  public LipDocument document() {
    return document;
  }

  /** Studies of the project; those on disk are read at the first call. */
  public StudyDesk studies() {
    if (studies == null) {
      studies =
          new StudyDesk(
              family,
              new StudyStore(folder().studies(), engine.get()),
              reader,
              javafx.application.Platform::runLater,
              Clock.systemUTC());
    }
    return studies;
  }

  public Shelf shelf() {
    return shelf;
  }

  /** Sections of machines solved before. */
  public ResultStore<LeakPoint> leaks() {
    return leaks;
  }

  /** Lips that searches of this project have tried. */
  ResultStore<SectionResult> searched() {
    return KeptResults.figures(folder().searches(), engine.get());
  }

  /** Machine files of the project and of the examples. */
  public List<Path> machineFiles() {
    List<Path> files = new ArrayList<>(folder().machineFiles());
    files.addAll(examples.machines());
    return files;
  }

  /** Lip files by the names of their lips; those of the project before examples. */
  Map<String, Path> lipFiles() {
    Map<String, Path> files = new LinkedHashMap<>();
    List<Path> all = new ArrayList<>(folder().lipFiles());
    all.addAll(examples.lipFiles());
    for (Path file : all) {
      try {
        files.putIfAbsent(LipFile.read(file).name(), file.toAbsolutePath().normalize());
      } catch (InputException e) {
        // a file that is no lip any more
      }
    }
    return files;
  }

  /** Turns to another folder; the lip on the bench stays. */
  public void use(Path other) {
    folder.set(new ProjectFolder(other));
    document.use(rescues.apply(folder().rescue()));
    if (studies != null) {
      studies.use(new StudyStore(folder().studies(), engine.get()));
    }
  }

  /** Makes the folder, before something is saved there. */
  void make() throws InputException {
    try {
      Files.createDirectories(folder().path());
    } catch (IOException e) {
      throw new InputException(
          "project.make",
          folder().path().toString(),
          "the project folder cannot be made; choose another one");
    }
  }

  /** The orderly end; nothing happens the second time. */
  public void close() {
    if (writer.isShutdown()) {
      return;
    }
    if (studies != null) {
      studies.close();
    }
    bench.stop();
    document.close();
    writer.shutdown();
    reader.shutdown();
    try {
      writer.awaitTermination(LONGEST_END, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Who puts drawings by, one after the other. */
  Executor writer() {
    return writer;
  }

  private List<LoadedLip> stored() {
    List<LoadedLip> lips = new ArrayList<>(folder().lips().lips());
    for (Examples.Example example : examples.all()) {
      LipFindings found = LipResolver.check(example.drawing());
      if (found.profile() != null) {
        lips.add(new LoadedLip(example.drawing(), found.profile(), found.notices()));
      }
    }
    return lips;
  }
}
