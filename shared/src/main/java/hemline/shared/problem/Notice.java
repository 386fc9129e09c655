package hemline.shared.problem;

import java.util.List;

/**
 * Something the reader of a result must know: a kind and its values, without words.
 *
 * @param kind says what it means and which values it has
 * @param lip name of the lip that it is about where several are shown together; else empty
 * @param names such as those of lips and flow models
 * @param numbers SI
 */
public record Notice(NoticeKind kind, String lip, List<String> names, List<Double> numbers) {
  public Notice {
    names = List.copyOf(names);
    numbers = List.copyOf(numbers);
    if (!kind.takes(names.size(), numbers.size())) {
      throw new IllegalArgumentException(
          kind + " has other values than the names " + names + " and the numbers " + numbers);
    }
  }

  /** Code of the kind. */
  public String code() {
    return kind.code();
  }

  /** The same where several lips are shown together. */
  public Notice about(String name) {
    return new Notice(kind, name, names, numbers);
  }
}
