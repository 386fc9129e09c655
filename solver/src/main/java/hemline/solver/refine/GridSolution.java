package hemline.solver.refine;

import hemline.shared.result.GridRun;
import hemline.solver.flow.FlowField;

/** One grid of a family: the figures and the flow they were measured on. */
public record GridSolution(GridRun run, FlowField field) {}
