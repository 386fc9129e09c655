package hemline.shared.problem;

/**
 * A fault in the input that the user can mend.
 *
 * @param code stable short name of the fault, such as {@code outline.crossing}
 * @param place where: file, key, vertex or option
 * @param text one clear sentence: what is wrong and what would be right
 */
public record Problem(String code, String place, String text) {
  public Problem {
    // both may quote a file that anybody wrote
    place = PlainText.shown(place);
    text = PlainText.shown(text);
  }

  @Override
  public String toString() {
    return place + ": " + text;
  }
}
