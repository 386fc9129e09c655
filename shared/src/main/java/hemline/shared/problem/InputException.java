package hemline.shared.problem;

import java.util.List;
import java.util.stream.Collectors;

/** Carries the problems of an input to the edge of the program, which prints one sentence each. */
public final class InputException extends Exception {
  private static final long serialVersionUID = 1L;
  private final transient List<Problem> problems;

  public InputException(List<Problem> problems) {
    super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  public InputException(String code, String place, String text) {
    this(List.of(new Problem(code, place, text)));
  }

  public List<Problem> problems() {
    return problems;
  }
}
