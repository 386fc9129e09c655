package hemline.validation.run;

import java.util.Map;

/** The set-ups made in code, by the name that cases use. */
final class ComputedCases {
  private static final Map<String, ComputedCase> BY_KEY =
      Map.ofEntries(
          Map.entry("step-re100", StepFlow.of(100, 0)),
          Map.entry("step-re200", StepFlow.of(200, 0)),
          Map.entry("step-re800", StepFlow.of(800, 0)),
          Map.entry("step-entry-re200", StepFlow.of(200, 10)),
          Map.entry("step-entry-re500", StepFlow.of(500, 10)));

  private ComputedCases() {}

  /**
   * Finds a set-up.
   *
   * @throws IllegalArgumentException when there is none of that name
   */
  static ComputedCase of(String key) {
    ComputedCase found = BY_KEY.get(key);
    if (found == null) {
      throw new IllegalArgumentException(
          "no set-up named " + key + "; there are " + BY_KEY.keySet().stream().sorted().toList());
    }
    return found;
  }
}
