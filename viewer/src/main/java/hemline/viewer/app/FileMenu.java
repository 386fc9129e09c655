package hemline.viewer.app;

import static hemline.viewer.app.BenchMenus.item;
import static hemline.viewer.app.BenchMenus.shortcut;

import hemline.shared.file.TextFiles;
import hemline.shared.problem.InputException;
import hemline.solver.study.RunOptions;
import hemline.viewer.model.Kept;
import hemline.viewer.model.LipDocument;
import hemline.viewer.model.Saving;
import hemline.viewer.model.Shown;
import hemline.viewer.page.PageHtml;
import hemline.viewer.page.SectionPage;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.report.ResultFolder;
import hemline.viewer.screen.BenchScreen;
import hemline.viewer.screen.NoticeStrip;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import org.jspecify.annotations.Nullable;

/** Opening, saving, guarding and recovering lips. */
public final class FileMenu {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMM yyyy, HH:mm", Locale.ENGLISH);
  private final Project project;
  private final LipDocument document;
  private final BenchScreen screen;
  private final NoticeStrip strip;
  private final FileAsk ask;
  private final Reading reading;
  private final RecoveryOffer recovery;

  FileMenu(Project project, BenchScreen screen, NoticeStrip strip, FileAsk ask) {
    this.project = project;
    this.document = project.document();
    this.screen = screen;
    this.strip = strip;
    this.ask = ask;
    this.reading = new Reading(strip);
    this.recovery = new RecoveryOffer(project, screen, strip, this::guarded);
    screen.setGuard(this::guarded);
  }

  Menu menu() {
    Menu again = new Menu("Open again");
    again.setId("menu-again");
    Menu here = new Menu("Lips of this project");
    here.setId("menu-project-lips");
    MenuItem where = new MenuItem();
    where.setDisable(true);
    Menu file =
        new Menu(
            "_File",
            null,
            item("Open \u2026", shortcut(KeyCode.O), this::open),
            again,
            here,
            new SeparatorMenuItem(),
            item("Save", shortcut(KeyCode.S), () -> save(() -> {})),
            item(
                "Save as \u2026",
                new KeyCodeCombination(
                    KeyCode.S, KeyCombination.SHORTCUT_DOWN, KeyCombination.SHIFT_DOWN),
                () -> saveAs(() -> {})),
            item("Write a report \u2026", null, this::report),
            new SeparatorMenuItem(),
            where,
            item("Another project folder \u2026", null, this::chooseFolder));
    file.setId("menu-file");
    file.setOnShowing(
        e -> {
          fillWith(again, project.recent()::files);
          fillWith(here, project.folder()::lipFiles);
          where.setText("Project: " + shortened(project.folder().path()));
        });
    return file;
  }

  /** Fills a menu with what is read beside the screen's thread; until then it offers nothing. */
  private void fillWith(Menu menu, Supplier<List<Path>> files) {
    menu.setDisable(true);
    Reading.beside(files, found -> fill(menu, found));
  }

  private void fill(Menu menu, List<Path> files) {
    menu.getItems().clear();
    for (Path file : files) {
      MenuItem item = new MenuItem(String.valueOf(file.getFileName()));
      item.setMnemonicParsing(false);
      item.setOnAction(e -> openGuarded(file));
      menu.getItems().add(item);
    }
    menu.setDisable(files.isEmpty());
  }

  private static String shortened(Path folder) {
    Path home = ProjectFolder.home(System.getenv(), System.getProperty("user.home", ""));
    return folder.startsWith(home) && !home.toString().isEmpty()
        ? "~/" + home.relativize(folder)
        : folder.toString();
  }

  /** Runs what would replace the lip, after asking for an unsaved one. */
  public void guarded(Runnable replace) {
    if (!document.unsaved().get()) {
      replace.run();
      return;
    }
    Map<String, Runnable> answers = new LinkedHashMap<>();
    answers.put("Save", () -> save(replace));
    answers.put("Throw away", replace);
    answers.put("Go on editing", () -> {});
    strip.ask(
        "\u201c"
            + project.bench().drawing().get().name()
            + "\u201d has changes that are not saved.",
        answers);
  }

  /** Closes the window when no lip is lost by that, on the bench or set aside. */
  void leaving(Runnable close) {
    guarded(
        () -> {
          List<Kept> aside = document.unsavedAside();
          if (aside.isEmpty()) {
            close.run();
            return;
          }
          Map<String, Runnable> answers = new LinkedHashMap<>();
          answers.put("Throw away", close);
          answers.put("Go on editing", () -> {});
          strip.ask(
              "\u201c"
                  + aside.get(0).drawing().name()
                  + "\u201d was set aside with changes that are not saved; swap brings it back.",
              answers);
        });
  }

  private void open() {
    Path file = ask.lip(project.folder().path());
    if (file != null) {
      openGuarded(file);
    }
  }

  /** Opens a lip file after asking for an unsaved lip. */
  void openGuarded(Path file) {
    guarded(() -> open(file));
  }

  private void open(Path file) {
    reading.start(
        file,
        () -> LipDocument.read(file),
        // the lip may have been edited meanwhile
        read ->
            guarded(
                () -> {
                  document.open(read);
                  screen.board().fit();
                  strip.hide();
                }));
  }

  /** Saves the lip, and goes on when it is in its file. */
  private void save(Runnable then) {
    Path file = document.file().get();
    if (file == null) {
      saveAs(then);
    } else {
      document.save(saving(file, then));
    }
  }

  private void saveAs(Runnable then) {
    Path suggestion = project.folder().fileFor(project.bench().drawing().get().name());
    inFolder(
        () -> {
          Path file = ask.target(suggestion, "Lip files", ".json");
          if (file != null) {
            document.saveAs(file, saving(file, then));
          }
        });
  }

  private Saving saving(Path file, Runnable then) {
    return new Saving() {
      @Override
      public void saved() {
        strip.hide();
        then.run();
      }

      @Override
      public void refused(InputException why) {
        tell(why);
      }

      @Override
      public void changedOutside() {
        askBeforeUndoing(file, this, then);
      }
    };
  }

  /** Another window or program wrote the file since: both versions are worth something. */
  private void askBeforeUndoing(Path file, Saving saving, Runnable then) {
    Map<String, Runnable> answers = new LinkedHashMap<>();
    answers.put("Save under another name", () -> saveAs(then));
    answers.put("Replace it", () -> document.saveAs(file, saving));
    answers.put("Go on editing", () -> {});
    strip.ask(
        "\u201c"
            + file.getFileName()
            + "\u201d was changed by another program since it was read here; saving would undo"
            + " that.",
        answers);
  }

  /** Goes on when the folder of the project is there. */
  private void inFolder(Runnable then) {
    beside(
        () -> {
          project.make();
          return then;
        });
  }

  /** Something that a disk may refuse, and what follows it. */
  private interface Disk {
    Runnable use() throws InputException;
  }

  private void beside(Disk work) {
    Reading.beside(
        () -> {
          try {
            return work.use();
          } catch (InputException e) {
            return () -> tell(e);
          }
        },
        Runnable::run);
  }

  private void report() {
    Shown shown = project.bench().shown().get();
    if (shown == null || shown.preview()) {
      strip.tell("There is no solved flow to report on yet; press Run first.");
      return;
    }
    RunOptions options = project.bench().options().get();
    String name = ResultFolder.fileName(shown.result().name());
    Path suggestion = project.folder().path().resolve(name + "-report.html");
    inFolder(
        () -> {
          Path target = ask.target(suggestion, "Pages", ".html");
          if (target != null) {
            beside(
                () -> {
                  report(shown, options, target);
                  return () ->
                      strip.tell(
                          "The report is in " + target + "; any browser shows and prints it.");
                });
          }
        });
  }

  private static void report(Shown shown, RunOptions options, Path target) throws InputException {
    TextFiles.write(
        target,
        PageHtml.of(
            SectionPage.of(
                shown.section(),
                shown.result(),
                shown.field(),
                null,
                options,
                TIME.format(Instant.now().atZone(ZoneId.systemDefault())))));
  }

  private void chooseFolder() {
    Path folder = ask.folder(project.folder().path());
    if (folder != null) {
      project.use(folder);
      offerRecovery();
    }
  }

  /** Offers what was left unsaved by a program that broke off. */
  void offerRecovery() {
    recovery.offer();
  }

  void tell(InputException e) {
    strip.tell(e.problems().get(0).toString());
  }

  /** What stands in the title of the window. */
  String title() {
    @Nullable Path file = document.file().get();
    String name = project.bench().drawing().get().name();
    return name
        + (document.unsaved().get() ? " (not saved)" : "")
        + (file == null ? "" : " \u2013 " + file.getFileName())
        + " \u2013 Hemline";
  }
}
