package hemline.viewer.cli;

import hemline.shared.file.LipFile;
import hemline.shared.file.LipImport;
import hemline.shared.file.LoadedLip;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.result.SectionResult;
import hemline.solver.study.Ranking;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.SectionAnswer;
import hemline.solver.study.SweepResult;
import hemline.viewer.report.ResultFolder;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Reads the lips that a command names. */
final class Lips {
  /** Baseline when none is named. */
  static final String USUAL_BASELINE = "plain flat 8";

  private Lips() {}

  /** One lip; null after a problem. */
  static @Nullable LoadedLip one(@Nullable Path file, Wanted wanted) {
    if (file == null) {
      wanted.fault("PROFILE", "a lip file is needed, such as profiles/plain-flat-8.json");
      return null;
    }
    if (Files.isDirectory(file)) {
      wanted.fault(file.toString(), "is a folder; name one lip file in it");
      return null;
    }
    try {
      return load(file);
    } catch (InputException e) {
      wanted.addAll(e);
      return null;
    }
  }

  /** A lip file or a drawing, as its name tells. */
  private static LoadedLip load(Path file) throws InputException {
    return LipImport.isDrawing(file) ? LipImport.load(file) : LipFile.load(file);
  }

  /** All lips of some files and folders, in the order given. */
  static List<LoadedLip> all(List<Path> places, Wanted wanted) {
    List<LoadedLip> lips = new ArrayList<>();
    if (places.isEmpty()) {
      wanted.fault("DIR", "a folder of lip files, or some lip files, are needed, such as profiles");
    }
    Map<String, Path> seen = new HashMap<>();
    for (Path place : places) {
      try {
        List<LoadedLip> here =
            Files.isDirectory(place) ? LipFile.loadFolder(place) : List.of(load(place));
        for (LoadedLip lip : here) {
          Path before = seen.putIfAbsent(lip.profile().name(), place);
          if (before == null) {
            lips.add(lip);
          } else {
            wanted.fault(
                place.toString(),
                "the lip \""
                    + lip.profile().name()
                    + "\" came already with "
                    + before
                    + "; name each lip once");
          }
        }
      } catch (InputException e) {
        wanted.addAll(e);
      }
    }
    return lips;
  }

  /**
   * The baseline: a lip of the list by its name, or a lip file of its own.
   *
   * @param named what the user gave; null for the usual one
   * @return null after a problem
   */
  static @Nullable LoadedLip baseline(List<LoadedLip> lips, @Nullable String named, Wanted wanted) {
    String name = named == null ? USUAL_BASELINE : named;
    String alike = ResultFolder.fileName(name);
    for (LoadedLip lip : lips) {
      if (lip.profile().name().equals(name)) {
        return lip;
      }
    }
    for (LoadedLip lip : lips) {
      if (ResultFolder.fileName(lip.profile().name()).equals(alike)) {
        return lip;
      }
    }
    if (named != null && named.matches("(?i).*\\.(json|svg|dxf)")) {
      try {
        return load(Path.of(named));
      } catch (InvalidPathException e) {
        wanted.fault("--baseline", "\"" + named + "\" is no file name here");
        return null;
      } catch (InputException e) {
        wanted.addAll(e);
        return null;
      }
    }
    if (!lips.isEmpty()) {
      String names =
          lips.stream().map(lip -> lip.profile().name()).collect(Collectors.joining(", "));
      wanted.fault(
          "--baseline",
          (named == null
                  ? "no lip is named \"" + USUAL_BASELINE + "\", the usual baseline"
                  : "no lip is named \"" + named + "\"")
              + "; name one of "
              + names
              + ", or a lip file");
    }
    return null;
  }

  /** The answer with what is to be known of the lip itself put before its own notices. */
  static SectionAnswer withNotices(SectionAnswer answer, LoadedLip lip) {
    return new SectionAnswer(withNotices(answer.result(), lip), answer.field());
  }

  /** The sweep with what is to be known of the lip itself at every point. */
  static SweepResult withNotices(SweepResult sweep, LoadedLip lip) {
    return new SweepResult(
        sweep.points().stream().map(point -> withNotices(point, lip)).toList(),
        sweep.gapExponent());
  }

  /** The ranking with what is to be known of the lips themselves after its own notices. */
  static RankingAnswer withNotices(RankingAnswer answer, List<LoadedLip> lips) {
    Ranking r = answer.ranking();
    List<Notice> notices = new ArrayList<>(r.notices());
    for (LoadedLip lip : lips) {
      lip.notices().forEach(notice -> notices.add(notice.about(lip.profile().name())));
    }
    return new RankingAnswer(
        new Ranking(
            r.baseline(),
            r.ground(),
            r.suction(),
            r.rows(),
            r.crossings(),
            r.possibleCrossings(),
            notices),
        answer.answers());
  }

  /** The result with what is to be known of the lip itself put before its own notices. */
  static SectionResult withNotices(SectionResult r, LoadedLip lip) {
    List<Notice> notices = new ArrayList<>(lip.notices());
    notices.addAll(r.notices());
    return r.withNotices(notices);
  }
}
