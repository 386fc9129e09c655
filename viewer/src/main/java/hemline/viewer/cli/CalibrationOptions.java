package hemline.viewer.cli;

import hemline.shared.file.CalibrationFile;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Calibration;
import hemline.solver.rig.Calibrations;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import picocli.CommandLine.Option;

/** Option for calibrations kept beside lips, and their reading. */
final class CalibrationOptions {
  @Option(
      names = "--uncalibrated",
      description = "Leave out calibrations that compare kept beside lip files.")
  boolean uncalibrated;

  /**
   * The calibrations of lips.
   *
   * @param places files of the lips, or folders of them
   * @param lips that are used; calibrations of others are passed over
   */
  Calibrations read(List<Path> places, List<LipProfile> lips, Wanted wanted) {
    List<Calibration> found = new ArrayList<>();
    for (Path file : uncalibrated ? Set.<Path>of() : files(places)) {
      try {
        Calibration one = CalibrationFile.read(file);
        boolean fits =
            lips.stream().anyMatch(lip -> Calibrations.outline(lip).equals(one.outline()));
        if (fits) {
          found.add(one);
        } else if (lips.stream().anyMatch(lip -> lip.name().equals(one.lip()))) {
          wanted.fault(
              file.toString(),
              "belongs to another outline of the lip \""
                  + one.lip()
                  + "\"; measure the new one and keep it, remove the file, or add --uncalibrated");
        }
      } catch (InputException e) {
        wanted.addAll(e);
      }
    }
    return new Calibrations(found);
  }

  /** Says that a command leaves out what is kept beside its lips, where something is. */
  static void tellLeftOut(Job job, String command, List<Path> places) {
    if (!files(places).isEmpty()) {
      job.tell("a calibration is kept beside the lip; " + command + " leaves it out.");
    }
  }

  private static Set<Path> files(List<Path> places) {
    Set<Path> files = new LinkedHashSet<>();
    for (Path place : places) {
      if (!Files.isDirectory(place)) {
        Path beside = CalibrationFile.beside(place);
        if (Files.exists(beside)) {
          files.add(beside);
        }
        continue;
      }
      try (Stream<Path> here = Files.list(place)) {
        here.filter(CalibrationFile::isNamed).sorted().forEach(files::add);
      } catch (IOException e) {
        // the folder was read for its lips already, which told the problem
        continue;
      }
    }
    return files;
  }
}
