package hemline.viewer.cli;

import hemline.viewer.format.ComparePage;
import hemline.viewer.format.CompareWords;
import hemline.viewer.format.Digits;
import hemline.viewer.format.TextTable;
import java.util.ArrayList;
import java.util.List;

/** A measurement beside its prediction for people. */
final class CompareText {
  private static final String INDENT = "  ";

  private CompareText() {}

  /** Lines of text. */
  static List<String> lines(String title, List<ComparePage.Part> parts, double seconds) {
    List<String> lines = new ArrayList<>();
    lines.add(title);
    for (ComparePage.Part part : parts) {
      lines.add("");
      lines.add(part.title());
      lines.addAll(BalanceText.table(part.table()));
      for (String sentence : part.sentences()) {
        lines.addAll(TextTable.wrapped(sentence, INDENT, INDENT + INDENT, ResultText.WIDTH));
      }
    }
    lines.add("");
    lines.addAll(cautions());
    lines.add(Digits.plain(seconds, 2) + " s.");
    return lines;
  }

  /** What a person must mind at a rig. */
  static List<String> cautions() {
    List<String> lines = new ArrayList<>();
    for (String caution : CompareWords.CAUTIONS) {
      lines.addAll(TextTable.wrapped("! " + caution, INDENT, INDENT + INDENT, ResultText.WIDTH));
    }
    return lines;
  }
}
