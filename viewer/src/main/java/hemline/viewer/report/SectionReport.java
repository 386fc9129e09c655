package hemline.viewer.report;

import hemline.shared.geometry.Vertex;
import hemline.shared.problem.Notice;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SectionResult;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.solver.flow.FlowField;
import hemline.solver.study.RunOptions;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.Digits;
import hemline.viewer.format.FigureHelp;
import hemline.viewer.format.FigureName;
import hemline.viewer.format.TradeUnit;
import hemline.viewer.format.Version;
import hemline.viewer.format.Wording;
import hemline.viewer.picture.ConvergenceChart;
import hemline.viewer.picture.MeshPicture;
import hemline.viewer.picture.SectionPicture;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A page on one solved section that stands by itself: what was asked, figures with their bands,
 * picture, mesh and convergence, warnings and cautions, version.
 */
public final class SectionReport {
  private final SectionResult result;
  private final @Nullable FlowField field;
  private final @Nullable Estimate relativeLeak;
  private final RunOptions options;
  private final boolean duct;

  private SectionReport(
      SectionResult result,
      @Nullable FlowField field,
      @Nullable Estimate relativeLeak,
      RunOptions options,
      boolean duct) {
    this.result = result;
    this.field = field;
    this.relativeLeak = relativeLeak;
    this.options = options;
    this.duct = duct;
  }

  /**
   * Page on a lip.
   *
   * @param field its flow; null when none was found
   * @param relativeLeak leak over that of a flat lip as wide; null when not asked for
   * @param when date and time as people read them; empty for none
   */
  public static String page(
      SealSection section,
      SectionResult result,
      @Nullable FlowField field,
      @Nullable Estimate relativeLeak,
      RunOptions options,
      String when) {
    SectionReport report = new SectionReport(result, field, relativeLeak, options, false);
    HtmlText page = report.head(Wording.conditions(result));
    if (field != null) {
      page.picture(SectionPicture.of(section, result, field), "streamlines and pressure");
    }
    report.figures(page);
    report.lipInputs(page, section);
    report.mesh(page, field == null ? null : MeshPicture.of(section, result, field));
    return report.tail(page, when);
  }

  /** Page on a duct; arguments as for a lip. */
  public static String page(
      DuctSection section,
      SectionResult result,
      @Nullable FlowField field,
      RunOptions options,
      String when) {
    SectionReport report = new SectionReport(result, field, null, options, true);
    HtmlText page = report.head(Wording.ground(result.groundSpeed(), result.spanwiseSpeed()));
    if (field != null) {
      page.picture(SectionPicture.of(section, result, field), "streamlines and pressure");
    }
    report.figures(page);
    report.ductInputs(page, section);
    report.mesh(page, field == null ? null : MeshPicture.of(section, result, field));
    return report.tail(page, when);
  }

  private HtmlText head(String conditions) {
    HtmlText page = new HtmlText(result.name() + " \u2013 Hemline report");
    page.title(result.name());
    return page.lead(conditions).lead(Wording.verdict(result));
  }

  private void figures(HtmlText page) {
    page.heading("Figures")
        .table("figure", "", "value", "band", "unit", "its parts", "how to judge it");
    if (relativeLeak != null) {
      figure(
          page,
          "leak over that of a flat lip",
          "",
          relativeLeak,
          new TradeUnit(1, ""),
          FigureHelp.relativeLeak().judgement());
    }
    for (Figure figure : Figure.values()) {
      Estimate estimate = result.figures().get(figure);
      if (estimate != null) {
        TradeUnit unit = duct ? TradeUnit.plain(figure) : TradeUnit.of(figure);
        String judgement = duct ? figure.meaning() : FigureHelp.of(figure).judgement();
        figure(page, FigureName.of(figure).strip(), figure.symbol(), estimate, unit, judgement);
      }
    }
    TradeUnit percent = new TradeUnit(100, "%");
    for (int k = 0; k < result.stageShares().size(); k++) {
      figure(
          page,
          "pressure share of stage " + (k + 1),
          "s_" + (k + 1),
          result.stageShares().get(k),
          percent,
          "Equal shares use all stages alike.");
    }
    for (int k = 0; k < result.carryOver().size(); k++) {
      figure(
          page,
          "carry-over to stage " + (k + 2),
          "",
          result.carryOver().get(k),
          percent,
          "Less is better: the jet should lose its energy before the next stage.");
    }
    for (SectionResult.TrappedVortex vortex : result.trappedVortices()) {
      double factor = duct ? 1 : 1000;
      String place =
          "q at x "
              + Digits.plain(vortex.x() * factor, 3)
              + ", y "
              + Digits.plain(vortex.y() * factor, 3)
              + (duct ? " m" : " mm");
      figure(
          page,
          "trapped vortex",
          "\u0393",
          vortex.strength(),
          new TradeUnit(1, place),
          "It takes energy from the leak and keeps it turning.");
    }
    page.endTable();
    page.text(
        "Every figure is an estimate: the band holds the numerical error, judged from three grids"
            + " (I. Celik et al., J. Fluids Eng. 130, 2008), what iteration left open and, in"
            + " turbulent and transitional flow, what the flow model may be off.");
  }

  private static void figure(
      HtmlText page, String name, String symbol, Estimate e, TradeUnit unit, String judgement) {
    page.row(
        "  nb  m",
        name,
        symbol.replace("_", ""),
        Digits.value(e, unit.factor()),
        Digits.band(e, unit.factor()),
        unit.unit(),
        Digits.parts(e, unit.factor()),
        judgement);
  }

  private void lipInputs(HtmlText page, SealSection section) {
    LipProfile lip = section.profile();
    page.heading("Inputs").table();
    page.row("", "lip", lip.name());
    row(page, "family", lip.family());
    row(page, "notes", lip.notes());
    page.row("", "gap", Wording.millimetres(section.gap()));
    page.row("", "suction", Wording.pressure(section.suction()));
    page.row(
        "", "ground", Wording.ground(section.ground().speed(), section.ground().spanwiseSpeed()));
    fluid(page, section.fluid().density(), section.fluid().kinematicViscosity());
    solve(page);
    page.endTable();
    page.text("Outline of the lip, mm; x from ambient to plenum, y up from its lowest point.");
    page.table("vertex", "x", "y", "bulge of the edge to the next");
    int k = 0;
    for (Vertex v : lip.outline().vertices()) {
      page.row(
          " nnn",
          k + (k == lip.mountEdge() ? " (mount edge begins)" : ""),
          Digits.plain(1000 * v.x(), 6),
          Digits.plain(1000 * v.y(), 6),
          v.bulge() == 0 ? "straight" : Digits.plain(v.bulge(), 6));
      k++;
    }
    page.endTable();
    if (!lip.detached().isEmpty()) {
      page.text("The lip has " + lip.detached().size() + " further parts that move with it.");
    }
  }

  private void ductInputs(HtmlText page, DuctSection duct) {
    page.heading("Inputs").table();
    page.row("", "duct", duct.name());
    page.row(
        "",
        "channel",
        "x from "
            + Digits.plain(duct.from(), 6)
            + " to "
            + Digits.plain(duct.to(), 6)
            + " m, height "
            + Digits.plain(duct.height(), 6)
            + " m");
    page.row("", "obstacles", String.valueOf(duct.obstacles().size()));
    Drive drive = duct.drive();
    if (drive instanceof Drive.LeakFlow flow) {
      page.row("", "drive", "flow " + Digits.plain(flow.value(), 6) + " m\u00b2/s");
    } else if (drive instanceof Drive.PressureDrop drop) {
      page.row("", "drive", "pressure drop " + Digits.plain(drop.value(), 6) + " Pa");
    } else {
      page.row("", "drive", "moving side walls");
    }
    page.row("", "ground speed", Digits.plain(duct.ground().speed(), 6) + " m/s");
    page.row("", "ceiling speed", Digits.plain(duct.upperWall().speed(), 6) + " m/s");
    fluid(page, duct.fluid().density(), duct.fluid().kinematicViscosity());
    solve(page);
    page.endTable();
  }

  private static void row(HtmlText page, String name, String value) {
    if (!value.isBlank()) {
      page.row("", name, value);
    }
  }

  private static void fluid(HtmlText page, double density, double viscosity) {
    page.row(
        "",
        "fluid",
        "density "
            + Digits.plain(density, 4)
            + " kg/m\u00b3, kinematic viscosity "
            + scientific(viscosity)
            + " m\u00b2/s");
  }

  private void solve(HtmlText page) {
    page.row("", "mesh", options.level().key());
    page.row("", "flow model", "asked " + options.closure().key() + ", used " + result.closure());
    page.row(
        "",
        "second turbulence model",
        options.modelSpread()
            ? "on all grids"
            : "on the coarsest grid where the flow model is open");
  }

  private void mesh(HtmlText page, @Nullable MeshPicture mesh) {
    page.heading("Mesh and convergence");
    page.table(
        "grid", "cells", "iterations", "ended", "mass residual", "momentum residual", "leak flow");
    int k = 1;
    for (GridRun run : result.grids()) {
      Double q = run.figures().scalars().get(Figure.LEAK_FLOW);
      double factor = duct ? 1 : 1000;
      page.row(
          "nnn nnn",
          String.valueOf(k++),
          String.valueOf(run.cells()),
          String.valueOf(run.iterations()),
          run.status().key(),
          scientific(run.massResidual()),
          scientific(run.momentumResidual()),
          q == null ? "-" : Digits.plain(factor * q, 5) + (duct ? " m\u00b2/s" : " L/s per m"));
    }
    page.endTable();
    if (result.figures().containsKey(Figure.LEAK_FLOW)) {
      page.picture(ConvergenceChart.of(result, duct), "leak flow from grid to grid");
    }
    if (mesh != null) {
      page.picture(mesh, "lines of the finest grid");
    }
  }

  private String tail(HtmlText page, String when) {
    if (!result.notices().isEmpty()) {
      page.heading("To know");
      page.list(result.notices().stream().map(Notice::text).toList(), true);
    }
    page.heading("Before you build").list(Cautions.all(), false);
    return page.end(
        "Hemline "
            + Version.TEXT
            + (when.isEmpty() ? "" : ", " + when)
            + (field == null ? ", no usable flow" : ""));
  }

  private static String scientific(double value) {
    return Double.isFinite(value)
        ? String.format(Locale.ROOT, "%.2e", value).replace('-', '\u2212')
        : "-";
  }
}
