package hemline.viewer.report;

import hemline.shared.problem.InputException;
import hemline.solver.plenum.MachineBalance;

/** Files of a machine's balance. */
public final class BalanceFiles {
  private BalanceFiles() {}

  /** Writes JSON, tables, plots and the report. */
  public static void write(ResultFolder folder, MachineBalance balance, String document)
      throws InputException {
    folder.write("balance.json", document);
  }
}
