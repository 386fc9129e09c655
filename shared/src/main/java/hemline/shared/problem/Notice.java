package hemline.shared.problem;

/**
 * Something the reader of a result must know.
 *
 * @param code stable short name, such as {@code regime.transition}
 * @param text one clear sentence
 */
public record Notice(String code, String text) {}
