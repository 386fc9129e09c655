package hemline.shared.section;

/**
 * Conditions that a section was solved under.
 *
 * @param gap reference gap, m
 * @param suction asked suction (lip) or pressure drop (duct), Pa
 * @param groundSpeed across the seal, positive towards the plenum, m/s
 * @param spanwiseSpeed along the seal, m/s
 */
public record SectionConditions(
    double gap, double suction, double groundSpeed, double spanwiseSpeed) {

  /** What is asked of a section. */
  public static SectionConditions of(Section section) {
    return of(section, section.askedDrop());
  }

  /** The same with the pressure drop, Pa, that was measured where none is asked. */
  public static SectionConditions of(Section section, double drop) {
    GroundMotion ground = section.ground();
    return new SectionConditions(section.gap(), drop, ground.speed(), ground.spanwiseSpeed());
  }
}
