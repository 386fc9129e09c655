package hemline.viewer.page;

import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import hemline.solver.flow.FlowField;
import hemline.solver.study.RunOptions;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.Digits;
import hemline.viewer.format.FigureHelp;
import hemline.viewer.format.FigureName;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.format.TradeUnit;
import hemline.viewer.format.Wording;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.ConvergenceChart;
import hemline.viewer.picture.MeshPicture;
import hemline.viewer.picture.SectionPicture;
import org.jspecify.annotations.Nullable;

/**
 * One solved section: figures with their bands and what to know about them; where there is room
 * also pictures, inputs, mesh, convergence and cautions.
 */
public final class SectionPage {
  private final SectionResult result;
  private final @Nullable FlowField field;
  private final RunOptions options;
  private final boolean duct;
  private final Page page;

  private SectionPage(
      SectionResult result, @Nullable FlowField field, RunOptions options, boolean duct) {
    this.result = result;
    this.field = field;
    this.options = options;
    this.duct = duct;
    page = new Page(result.name());
  }

  /**
   * Page on a section.
   *
   * @param field its flow; null when none was found
   * @param relativeLeak leak over that of a flat lip as wide; null when not asked for
   * @param when date and time as people read them; empty for none
   */
  public static Page of(
      Section section,
      SectionResult result,
      @Nullable FlowField field,
      @Nullable Estimate relativeLeak,
      RunOptions options,
      String when) {
    boolean duct = section instanceof DuctSection;
    SectionPage p = new SectionPage(result, field, options, duct);
    p.page
        .quiet(duct ? Wording.ground(result.conditions()) : Wording.conditions(result))
        .quiet(Wording.verdict(result));
    if (field != null) {
      p.page.plot(() -> SectionPicture.of(section, result, field), "streamlines and pressure");
    }
    p.figures(relativeLeak);
    p.page.heading("Inputs").table(p.inputs(section));
    if (section instanceof SealSection seal) {
      p.outline(seal.profile());
    }
    p.mesh();
    if (field != null) {
      p.page.plot(() -> MeshPicture.of(section, result, field), "lines of the finest grid");
    }
    return p.end(when);
  }

  private void figures(@Nullable Estimate relativeLeak) {
    PageTable table =
        PageTable.of("figure", "", "value", "band", "unit", "its parts", "how to judge it")
            .bare()
            .details(1);
    if (relativeLeak != null) {
      String name = "leak over that of a flat lip";
      row(table, name, "", relativeLeak, TradeUnit.NONE, FigureHelp.relativeLeak().judgement());
    }
    for (Figure f : Figure.values()) {
      Estimate e = result.figures().get(f);
      if (e != null && (e.value() != 0 || !onlyForMovingGround(f))) {
        TradeUnit unit = duct ? TradeUnit.plain(f) : TradeUnit.of(f);
        String help = duct ? f.meaning() : FigureHelp.of(f).judgement();
        row(table, FigureName.of(f), f.symbol(), e, unit, help);
      }
    }
    int stage = 1;
    for (Estimate share : result.figures().stageShares()) {
      String help = "Equal shares use all stages alike.";
      row(table, "pressure share of stage " + stage, "s_" + stage, share, TradeUnit.PERCENT, help);
      stage++;
    }
    stage = 2;
    for (Estimate share : result.figures().carryOver()) {
      String help = "Less is better: the jet should lose its energy before the next stage.";
      row(table, "carry-over to stage " + stage++, "", share, TradeUnit.PERCENT, help);
    }
    for (SectionFigures.TrappedVortex vortex : result.figures().trappedVortices()) {
      String help = "It takes energy from the leak and keeps it turning.";
      row(table, "trapped vortex", "\u0393", vortex.strength(), place(vortex), help);
    }
    page.table(table).details();
    page.quiet(
        "Every figure is an estimate: the band holds the numerical error, judged from three grids"
            + " (I. Celik et al., J. Fluids Eng. 130, 2008), what iteration left open and, in"
            + " turbulent and transitional flow, what the flow model may be off.");
    page.everywhere().notices(result.notices()).details();
  }

  /** Figures that are nothing but zero over ground at rest. */
  private static boolean onlyForMovingGround(Figure figure) {
    return figure == Figure.GROUND_DRAG_SPANWISE || figure == Figure.GROUND_POWER;
  }

  private TradeUnit place(SectionFigures.TrappedVortex vortex) {
    double factor = duct ? 1 : LengthUnit.factor();
    return new TradeUnit(
        1,
        "%s at x %s, y %s %s"
            .formatted(
                result.figures().scalars().containsKey(Figure.LEAK_FLOW) ? "q" : "m\u00b2/s",
                Digits.plain(vortex.x() * factor, 3),
                Digits.plain(vortex.y() * factor, 3),
                duct ? "m" : LengthUnit.unit()));
  }

  private static void row(
      PageTable table, String name, String symbol, Estimate e, TradeUnit unit, String judgement) {
    table.row(
        name,
        symbol,
        Digits.value(e, unit.factor()),
        Digits.band(e, unit.factor()),
        unit.unit(),
        Digits.parts(e, unit.factor()),
        judgement);
  }

  private PageTable inputs(Section section) {
    PageTable table = PageTable.of("", "");
    if (section instanceof SealSection seal) {
      LipProfile lip = seal.profile();
      table.row("lip", lip.name());
      optional(table, "family", lip.family());
      optional(table, "notes", lip.notes());
      table
          .row("gap", Wording.length(seal.gap()))
          .row("suction", Wording.pressure(seal.suction()))
          .row("ground", Wording.ground(seal.ground().speed(), seal.ground().spanwiseSpeed()));
    } else if (section instanceof DuctSection channel) {
      duct(table, channel);
    }
    return table
        .row(
            "fluid",
            "density %s kg/m\u00b3, kinematic viscosity %s m\u00b2/s"
                .formatted(
                    Digits.plain(section.fluid().density(), 4),
                    Digits.scientific(section.fluid().kinematicViscosity())))
        .row("mesh", options.level().key())
        .row("flow model", "asked " + options.closure().key() + ", used " + result.closure())
        .row(
            "second turbulence model",
            options.modelSpread()
                ? "on all grids"
                : "on the coarsest grid where the flow model is open");
  }

  private static void duct(PageTable table, DuctSection duct) {
    Drive drive = duct.drive();
    String driven =
        drive instanceof Drive.LeakFlow flow
            ? "flow " + Digits.plain(flow.value(), 6) + " m\u00b2/s"
            : drive instanceof Drive.PressureDrop drop
                ? "pressure drop " + Digits.plain(drop.value(), 6) + " Pa"
                : "moving side walls";
    table
        .row("duct", duct.name())
        .row(
            "channel",
            "x from %s to %s m, height %s m"
                .formatted(
                    Digits.plain(duct.channel().from(), 6),
                    Digits.plain(duct.channel().to(), 6),
                    Digits.plain(duct.channel().height(), 6)))
        .row("obstacles", String.valueOf(duct.obstacles().size()))
        .row("drive", driven)
        .row("ground speed", Digits.plain(duct.ground().speed(), 6) + " m/s")
        .row("ceiling speed", Digits.plain(duct.walls().upper().speed(), 6) + " m/s");
  }

  private void outline(LipProfile lip) {
    page.plain(
        "Outline of the lip, "
            + LengthUnit.unit()
            + "; x from ambient to plenum, y up from its lowest point.");
    PageTable outline = PageTable.of("corner", "x", "y", "bulge of the edge to the next");
    int k = 0;
    for (Vertex v : lip.outline().vertices()) {
      outline.row(
          k + (k == lip.mountEdge() ? " (mount edge begins)" : ""),
          LengthUnit.bare(v.x(), 6),
          LengthUnit.bare(v.y(), 6),
          v.bulge() == 0 ? "straight" : Digits.plain(v.bulge(), 6));
      k++;
    }
    page.table(outline);
    int parts = lip.detached().size();
    page.plain(parts == 0 ? "" : "The lip has " + parts + " further parts that move with it.");
  }

  private static void optional(PageTable table, String name, String value) {
    if (!value.isBlank()) {
      table.row(name, value);
    }
  }

  private void mesh() {
    PageTable table =
        PageTable.of(
            "grid",
            "cells",
            "iterations",
            "ended",
            "mass residual",
            "momentum residual",
            "leak flow");
    int k = 1;
    for (GridRun run : result.grids()) {
      Double q = run.figures().scalars().get(Figure.LEAK_FLOW);
      table.row(
          String.valueOf(k++),
          String.valueOf(run.cells()),
          String.valueOf(run.iterations()),
          run.status().key(),
          Digits.scientific(run.massResidual()),
          Digits.scientific(run.momentumResidual()),
          q == null
              ? "-"
              : duct
                  ? Digits.plain(q, 5) + " m\u00b2/s"
                  : Digits.plain(1000 * q, 5) + " L/s per m");
    }
    page.heading("Mesh and convergence").table(table);
    if (result.figures().scalars().containsKey(Figure.LEAK_FLOW)) {
      page.plot(() -> ConvergenceChart.of(result, duct), "leak flow from grid to grid");
    }
  }

  private Page end(String when) {
    if (!duct) {
      page.everywhere().heading("Before you build").text(Cautions.SHORT, Tone.CAUTION).details();
    }
    page.texts(Cautions.all(), Tone.CAUTION);
    page.quiet(when.isEmpty() ? "" : "Made " + when + ".");
    return page.quiet(field == null ? "There is no usable flow." : "");
  }
}
