package hemline.shared.result;

/** A scalar figure of a settled machine: its names in files, symbol, SI unit and meaning. */
public enum MachineFigure {
  SUCTION("suction", "suction", "\u0394p", "Pa", "suction", "ambient minus plenum pressure"),
  DOWNFORCE(
      "downforce", "downforce", "F", "N", "downforce", "all forces of the air towards the ground"),
  FLOOR_FORCE(
      "floorForce",
      "downforceParts/floor",
      "F_f",
      "N",
      "\u00b7 suction on the floor",
      "suction times the area of the floor"),
  LIP_FORCE(
      "lipForce",
      "downforceParts/lips",
      "F_l",
      "N",
      "\u00b7 air on the lips",
      "pressure and shear on all lips, towards the ground"),
  FAN_THRUST(
      "fanThrust",
      "downforceParts/fanThrust",
      "F_t",
      "N",
      "\u00b7 thrust of the fan",
      "reaction of the fan's jet, towards the ground"),
  VALVE_FORCE(
      "valveForce",
      "downforceParts/valve",
      "F_v",
      "N",
      "\u00b7 jet of the valve",
      "reaction of the relief valve's jet, towards the ground"),
  CENTRE_X(
      "centreOfPressureX",
      "centreOfPressure/x",
      "x_p",
      "m",
      "centre of pressure, forwards",
      "where the downforce acts, forwards of the origin"),
  CENTRE_Y(
      "centreOfPressureY",
      "centreOfPressure/y",
      "y_p",
      "m",
      "centre of pressure, to the left",
      "where the downforce acts, left of the origin"),
  LEAST_GAP(
      "leastGap",
      "gapUnderLoad/least",
      "h",
      "m",
      "smallest gap",
      "smallest clearance under any lip with the springs pressed together"),
  HEAVE("heave", "gapUnderLoad/heave", "z", "m", "heave, downwards", "sink of the floor's origin"),
  PITCH("pitch", "gapUnderLoad/pitch", "\u03b8", "rad", "pitch, nose down", "turn of the floor"),
  FAN_FLOW("fanFlow", "fanFlow", "Q", "m3/s", "fan flow", "volume flow through the fan"),
  AIR_POWER("airPower", "power/air", "P_a", "W", "air power", "suction times fan flow"),
  SHAFT_POWER("shaftPower", "power/shaft", "P_s", "W", "shaft power", "power on the fan's shaft"),
  ELECTRICAL_POWER(
      "electricalPower",
      "power/electrical",
      "P_e",
      "W",
      "electrical power of the fan",
      "shaft power over the efficiency of the motor"),
  RUN_TIME(
      "runTime",
      "power/runTime",
      "t",
      "s",
      "run time on the battery, fan alone",
      "usable energy of the battery over the fan's power"),
  RUN_TIME_DRIVING(
      "runTimeDriving",
      "power/runTimeDriving",
      "t_d",
      "s",
      "run time, drive at full power",
      "usable energy of the battery over the power of fan and drive");

  private final String key;
  private final String place;
  private final String symbol;
  private final String unit;
  private final String title;
  private final String meaning;

  MachineFigure(
      String key, String place, String symbol, String unit, String title, String meaning) {
    this.key = key;
    this.place = place;
    this.symbol = symbol;
    this.unit = unit;
    this.title = title;
    this.meaning = meaning;
  }

  /** Name in tables. */
  public String key() {
    return key;
  }

  /** Place in documents: the names of its groups and its own with slashes between. */
  public String place() {
    return place;
  }

  public String symbol() {
    return symbol;
  }

  /** SI unit as written in files. */
  public String unit() {
    return unit;
  }

  /** Short name for people; a part of the figure before begins with a dot. */
  public String title() {
    return title;
  }

  /** One clause that explains the figure. */
  public String meaning() {
    return meaning;
  }
}
