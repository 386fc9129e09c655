package hemline.validation.reference;

import java.util.List;

/**
 * A flow with known answers.
 *
 * @param name folder and case, such as {@code lips/flat-re20-still}
 * @param purpose what it is for
 * @param flow what stands behind its references
 * @param setup the question
 * @param mesh finest grid of the family: coarse, medium or fine
 * @param fast true when it belongs to the subset that every build runs
 * @param expected what its quantities should be
 * @param profiles published profiles to lay over the computed ones; may be empty
 */
public record ReferenceCase(
    String name,
    Purpose purpose,
    FlowClass flow,
    CaseSetup setup,
    String mesh,
    boolean fast,
    List<ExpectedFigure> expected,
    List<ProfileReference> profiles) {
  /**
   * What a case is for.
   *
   * @param title for people
   * @param proves what it proves for a seal, one sentence
   * @param covers which part of a seal's life it stands for, such as {@code laminar gap}
   */
  public record Purpose(String title, String proves, String covers) {}

  public ReferenceCase {
    expected = List.copyOf(expected);
    profiles = List.copyOf(profiles);
  }

  /** The sources of all expected quantities, each once. */
  public List<String> sources() {
    return expected.stream().map(e -> e.evidence().source()).distinct().toList();
  }
}
