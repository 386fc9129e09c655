package hemline.solver.rig;

/** Where an uncertainty comes from. */
public enum Source {
  GAP("gap", "the gap"),
  SUCTION("suction", "the suction gauge"),
  FLOW("flow", "the flow meter"),
  FAN("fan", "the fan's speed and curve"),
  LIP_LENGTH("lipLength", "the length of the lip"),
  AIR("air", "temperature and barometer"),
  BOX("box", "the leaks of the box"),
  SCATTER("scatter", "scatter from reading to reading"),
  EXPANSION("expansion", "the expansion of the air"),
  GRID("grid", "the grid of the prediction");

  private final String key;
  private final String words;

  Source(String key, String words) {
    this.key = key;
    this.words = words;
  }

  /** Name in files. */
  public String key() {
    return key;
  }

  /** For people. */
  public String words() {
    return words;
  }
}
