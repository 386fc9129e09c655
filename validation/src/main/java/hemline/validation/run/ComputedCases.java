package hemline.validation.run;

import java.util.Map;

/** The set-ups made in code, by the name that cases use. */
final class ComputedCases {
  private static final Map<String, ComputedCase> BY_KEY =
      Map.ofEntries(
          Map.entry("column-still", ExactCases.column(0, 0)),
          Map.entry("column-with-leak", ExactCases.column(1, 0)),
          Map.entry("column-against-leak", ExactCases.column(-1, 0.5)),
          Map.entry("kovasznay-re40", ExactCases.kovasznay(40)),
          Map.entry("slanted-20", ExactCases.slanted(20, 20)),
          Map.entry("wedge-converging", ExactCases.wedge(10, -50, -0.644412277)),
          Map.entry("wedge-diverging", ExactCases.wedge(10, 50, -5.910438904)),
          Map.entry("wedge-backflow", ExactCases.wedge(10, 100, -12.19291529)),
          Map.entry("cylinder-over-plane", ExactCases.cylinderOverPlane(1, 1.5)),
          Map.entry("decaying-turbulence", DecayFlow.of()),
          Map.entry("slider", SliderFlow.of()),
          Map.entry("cylinder-re20-fine", CylinderFlow.of()),
          Map.entry("step-re100", StepFlow.of(100, 0, 2)),
          Map.entry("step-re200", StepFlow.of(200, 0, 2)),
          Map.entry("step-re800", StepFlow.of(800, 0, 3)),
          Map.entry("step-entry-re200", StepFlow.of(200, 10, 2)),
          Map.entry("step-entry-re500", StepFlow.of(500, 10, 2)),
          Map.entry("step-armaly-re100", StepFlow.armaly(100)),
          Map.entry("step-armaly-re389", StepFlow.armaly(389)));

  private ComputedCases() {}

  /**
   * Finds a set-up.
   *
   * @throws IllegalArgumentException when there is none of that name
   */
  static ComputedCase of(String key) {
    ComputedCase found = BY_KEY.getOrDefault(key, TurbulentCases.BY_KEY.get(key));
    if (found == null) {
      throw new IllegalArgumentException(
          "no set-up named " + key + "; there are " + BY_KEY.keySet().stream().sorted().toList());
    }
    return found;
  }
}
