package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import java.util.List;

/**
 * What the machine does at the point where it settles.
 *
 * @param suction Pa
 * @param fanFlow m³/s
 * @param airPower suction times fan flow, W
 * @param shaftPower W
 * @param electricalPower of the fan, W
 * @param runTime of the fan alone on the battery, s
 * @param runTimeDriving of the fan with the drive at full power, s
 * @param downforce N
 * @param floorForce suction on the floor, N
 * @param lipForce fluid on the lips, N
 * @param thrust of the fan's jet, N
 * @param valveForce of the valve's jet, N
 * @param centreX of pressure, m
 * @param centreY of pressure, m
 * @param axleLoads weight and downforce on level ground, by axle, N
 * @param edgeGaps smallest gap under each edge, m
 * @param edgeLeaks leak under each edge, m³/s
 * @param leastGap smallest of them, m
 * @param leastEdge its edge
 * @param heave sink at the origin, m
 * @param pitch nose down, rad
 */
public record SettledFigures(
    Estimate suction,
    Estimate fanFlow,
    Estimate airPower,
    Estimate shaftPower,
    Estimate electricalPower,
    Estimate runTime,
    Estimate runTimeDriving,
    Estimate downforce,
    Estimate floorForce,
    Estimate lipForce,
    Estimate thrust,
    Estimate valveForce,
    Estimate centreX,
    Estimate centreY,
    List<Estimate> axleLoads,
    List<Estimate> edgeGaps,
    List<Estimate> edgeLeaks,
    Estimate leastGap,
    int leastEdge,
    Estimate heave,
    Estimate pitch) {
  public SettledFigures {
    axleLoads = List.copyOf(axleLoads);
    edgeGaps = List.copyOf(edgeGaps);
    edgeLeaks = List.copyOf(edgeLeaks);
  }
}
