package hemline.viewer.report;

import hemline.solver.plenum.MachineBalance;
import hemline.viewer.format.BalancePage;
import hemline.viewer.format.BalanceWords;
import hemline.viewer.picture.DownforceChart;
import hemline.viewer.picture.FanChart;
import hemline.viewer.picture.HoldChart;
import hemline.viewer.picture.Picture;
import hemline.viewer.picture.TradeChart;
import java.util.List;

/** A machine's balance as one HTML page with its plots inside. */
final class BalanceReport {
  private static final String STYLE =
      """
      body { font: 15px/1.45 "DejaVu Sans", sans-serif; color: #232a3c; background: #fff;
        max-width: 70rem; margin: 2rem auto; padding: 0 1rem; }
      h1 { font-size: 1.6rem; margin-bottom: 0.2rem; }
      h2 { font-size: 1.1rem; margin: 2rem 0 0.6rem; }
      p { margin: 0.35rem 0; }
      table { border-collapse: collapse; font-variant-numeric: tabular-nums; font-size: 0.9rem; }
      th, td { text-align: left; padding: 0.2rem 1.1rem 0.2rem 0; border-bottom: 1px solid #dfe2e8;
        white-space: nowrap; }
      th { font-weight: 600; }
      .wide { overflow-x: auto; }
      .quiet { color: #666d7d; }
      .caution { border-left: 4px solid #c8501e; padding: 0.3rem 0.8rem; margin: 0.7rem 0;
        background: #fbf3ee; }
      svg { max-width: 100%; height: auto; margin-top: 0.8rem; }
      @media print { body { font-size: 12px; } .wide { overflow: visible; } th, td { white-space: normal; } h2, table, svg, .caution { break-inside: avoid; } }
      """;

  private BalanceReport() {}

  /**
   * The page.
   *
   * @param mesh level of the sections
   */
  static String html(MachineBalance balance, String mesh) {
    StringBuilder out = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n");
    out.append("<meta charset=\"utf-8\">\n<title>");
    out.append(HtmlText.escaped(balance.machine().name())).append("</title>\n<style>\n");
    out.append(STYLE).append("</style>\n</head>\n<body>\n<h1>");
    out.append(HtmlText.escaped(BalancePage.title(balance.machine()))).append("</h1>\n");
    paragraph(out, "quiet", BalanceWords.conditions(balance.machine()));
    if (!balance.machine().notes().isEmpty()) {
      paragraph(out, "", balance.machine().notes());
    }
    for (BalancePage.Block block : BalancePage.of(balance)) {
      out.append("<h2>").append(HtmlText.escaped(block.title())).append("</h2>\n");
      table(out, block.table());
      block.sentences().forEach(s -> paragraph(out, "", s));
      block.cautions().forEach(s -> paragraph(out, "caution", s));
      switch (block.topic()) {
        case POINTS -> picture(out, FanChart.of(balance));
        case FIGURES -> picture(out, DownforceChart.of(balance));
        case HOLDS -> picture(out, HoldChart.of(balance));
        case TRADES -> picture(out, TradeChart.of(balance));
        default -> {}
      }
    }
    paragraph(
        out,
        "quiet",
        balance.leakPoints().size()
            + " sections solved on "
            + mesh
            + " grids. Every figure comes with the band that the leaks' own bands leave it.");
    return out.append("</body>\n</html>\n").toString();
  }

  private static void picture(StringBuilder out, Picture picture) {
    String svg = picture.svg();
    out.append(svg.substring(Math.max(0, svg.indexOf("<svg")))).append('\n');
  }

  private static void table(StringBuilder out, List<List<String>> rows) {
    if (rows.isEmpty()) {
      return;
    }
    out.append("<div class=\"wide\"><table>\n");
    for (int i = 0; i < rows.size(); i++) {
      String cell = i == 0 ? "th" : "td";
      out.append("<tr>");
      for (String text : rows.get(i)) {
        out.append('<').append(cell).append('>').append(HtmlText.escaped(text));
        out.append("</").append(cell).append('>');
      }
      out.append("</tr>\n");
    }
    out.append("</table></div>\n");
  }

  private static void paragraph(StringBuilder out, String style, String text) {
    out.append(style.isEmpty() ? "<p>" : "<p class=\"" + style + "\">");
    out.append(HtmlText.escaped(text)).append("</p>\n");
  }
}
