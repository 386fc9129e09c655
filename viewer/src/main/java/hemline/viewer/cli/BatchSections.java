package hemline.viewer.cli;

import hemline.shared.file.LoadedLip;
import hemline.shared.file.SectionTableFile;
import hemline.shared.fluid.FluidState;
import hemline.shared.problem.InputException;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The sections of a batch, with the lip file of each.
 *
 * @param lips one for each section
 * @param sections in the order of the table
 */
record BatchSections(List<LoadedLip> lips, List<SealSection> sections) {
  static final int MOST = 100_000;

  /** The sections of a table; what is wrong with it is told to {@code wanted}. */
  static BatchSections table(Path file, FluidState air, Wanted wanted) {
    BatchSections all = new BatchSections(new ArrayList<>(), new ArrayList<>());
    try {
      Map<Path, LoadedLip> known = new LinkedHashMap<>();
      for (SectionTableFile.Row row : SectionTableFile.read(file)) {
        LoadedLip lip = known.get(row.lip());
        if (lip == null && !known.containsKey(row.lip())) {
          lip = Lips.one(row.lip(), wanted);
          known.put(row.lip(), lip);
        }
        if (lip != null) {
          all.add(lip, row.gap(), row.suction(), row.ground(), air);
        }
      }
    } catch (InputException e) {
      wanted.addAll(e);
    }
    all.check(file.toString(), wanted);
    return all;
  }

  /** Every lip at every gap, suction and ground speed, in this order. */
  static BatchSections product(
      List<LoadedLip> lips,
      List<Double> gaps,
      List<Double> suctions,
      List<GroundMotion> motions,
      FluidState air,
      Wanted wanted) {
    BatchSections all = new BatchSections(new ArrayList<>(), new ArrayList<>());
    long count = (long) lips.size() * gaps.size() * suctions.size() * motions.size();
    if (count > MOST) {
      wanted.fault("STUDY", tooMany(count));
      return all;
    }
    for (LoadedLip lip : lips) {
      for (double gap : gaps) {
        for (double suction : suctions) {
          motions.forEach(motion -> all.add(lip, gap, suction, motion, air));
        }
      }
    }
    return all;
  }

  private void add(LoadedLip lip, double gap, double suction, GroundMotion motion, FluidState air) {
    lips.add(lip);
    sections.add(new SealSection(lip.profile(), gap, suction, motion, air, List.of()));
  }

  private void check(String place, Wanted wanted) {
    if (sections.size() > MOST) {
      wanted.fault(place, tooMany(sections.size()));
    }
  }

  private static String tooMany(long count) {
    return "a batch takes at most " + MOST + " sections, got " + count + "; split the study";
  }
}
