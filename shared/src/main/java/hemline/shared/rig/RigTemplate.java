package hemline.shared.rig;

/** A rig file to fill in. */
public final class RigTemplate {
  /** The text, with invented readings that show the form. */
  public static final String TEXT =
      """
      # Rig file of Hemline. Fill it in with any spreadsheet and save it as CSV; lines that begin with # are remarks.
      # Each column is an instrument with its unit in brackets (write other units there if you like), each line is
      #   accuracy, accuracy %   limits of the instrument's error, absolute and in per cent of the reading
      #   resolution             smallest step of the display; for the gap: what setting it anew may change
      #   rig                    what holds all along: length of the lip, air, volume of the box
      #   taped                  a reading with the lip taped shut: the leaks of the box; best at two suctions
      #   lip                    a reading with the lip over shims; repeat some
      #   decay                  blower shut off, hose closed: suction and time while it falls; no gap: lip taped
      # Without a flow meter: leave flow empty and add the columns fan speed (rpm), curve speed (rpm), fan curve (its file).
      # Write suction without a minus sign, flow as the volume it has in the room. The figures below are invented; put
      # yours in their place and take out the line "invented".
      what,gap (mm),suction (Pa),flow (L/s),lip length (mm),temperature (degC),barometer (hPa),box volume (L),time (s)
      invented
      accuracy,0.03,5,,1,1,2,1,0.02
      accuracy %,,1,2,,,,,
      resolution,0.02,1,0.1,,,,,
      rig,,,,600,21,1004,45,
      taped,,300,0.7,,,,,
      taped,,600,1.1,,,,,
      lip,1,300,10.3,,,,,
      lip,1,302,10.4,,,,,
      lip,1,600,15.0,,,,,
      lip,2,300,21.1,,,,,
      lip,2,301,21.2,,,,,
      lip,2,600,30.2,,,,,
      lip,3,300,31.1,,,,,
      lip,3,600,43.7,,,,,
      """;

  private RigTemplate() {}
}
