package hemline.solver.study;

import hemline.shared.result.SectionResult;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;

/** What a sweep changes from point to point. */
public enum Swept {
  /** Clearance between lip and ground, m. */
  GAP {
    @Override
    public SealSection at(SealSection base, double value) {
      return base.withGap(value);
    }

    @Override
    public double of(SectionResult result) {
      return result.conditions().gap();
    }
  },
  /** Ambient minus plenum pressure, Pa. */
  SUCTION {
    @Override
    public SealSection at(SealSection base, double value) {
      return base.withSuction(value);
    }

    @Override
    public double of(SectionResult result) {
      return result.conditions().suction();
    }
  },
  /** Speed of the ground across the lip, positive towards the plenum, m/s. */
  GROUND_SPEED {
    @Override
    public SealSection at(SealSection base, double value) {
      return new SealSection(
          base.profile(),
          base.gap(),
          base.suction(),
          new GroundMotion(value, base.ground().spanwiseSpeed()),
          base.fluid(),
          base.groundBumps());
    }

    @Override
    public double of(SectionResult result) {
      return result.conditions().groundSpeed();
    }
  };

  /** The section at a value, SI. */
  public abstract SealSection at(SealSection base, double value);

  /** The value of an answer, SI. */
  public abstract double of(SectionResult result);
}
