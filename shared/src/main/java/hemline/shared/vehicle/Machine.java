package hemline.shared.vehicle;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A machine held down by suction.
 *
 * @param name for people
 * @param notes free text
 * @param invented true when its figures are made up
 * @param air around it
 * @param floor outline, seal and ceiling height
 * @param travelSpeed forwards, m/s
 * @param load mass and centre of gravity
 * @param running wheels and drive
 * @param fan suction fan
 * @param power motor and battery of the fan
 * @param valve relief valve; null for none
 * @param otherLeaks openings beside the seal
 * @param step dip of the ground to cross; null when none is asked
 * @param slope steepest slope it must climb, rad
 * @param terms what its hold must meet
 */
public record Machine(
    String name,
    String notes,
    boolean invented,
    Surroundings air,
    FloorOutline floor,
    double travelSpeed,
    Load load,
    Running running,
    Fan fan,
    PowerSupply power,
    @Nullable ReliefValve valve,
    List<OtherLeak> otherLeaks,
    @Nullable GroundStep step,
    double slope,
    HoldTerms terms) {
  public Machine {
    otherLeaks = List.copyOf(otherLeaks);
  }

  /** A machine whose hold has the usual terms. */
  public Machine(
      String name,
      String notes,
      boolean invented,
      Surroundings air,
      FloorOutline floor,
      double travelSpeed,
      Load load,
      Running running,
      Fan fan,
      PowerSupply power,
      @Nullable ReliefValve valve,
      List<OtherLeak> otherLeaks,
      @Nullable GroundStep step,
      double slope) {
    this(
        name,
        notes,
        invented,
        air,
        floor,
        travelSpeed,
        load,
        running,
        fan,
        power,
        valve,
        otherLeaks,
        step,
        slope,
        HoldTerms.USUAL);
  }

  public Machine withFloor(FloorOutline newFloor) {
    return new Machine(
        name,
        notes,
        invented,
        air,
        newFloor,
        travelSpeed,
        load,
        running,
        fan,
        power,
        valve,
        otherLeaks,
        step,
        slope,
        terms);
  }

  public Machine atTravelSpeed(double newTravelSpeed) {
    return new Machine(
        name,
        notes,
        invented,
        air,
        floor,
        newTravelSpeed,
        load,
        running,
        fan,
        power,
        valve,
        otherLeaks,
        step,
        slope,
        terms);
  }

  public Machine withLoad(Load newLoad) {
    return new Machine(
        name,
        notes,
        invented,
        air,
        floor,
        travelSpeed,
        newLoad,
        running,
        fan,
        power,
        valve,
        otherLeaks,
        step,
        slope,
        terms);
  }

  public Machine withRunning(Running newRunning) {
    return new Machine(
        name,
        notes,
        invented,
        air,
        floor,
        travelSpeed,
        load,
        newRunning,
        fan,
        power,
        valve,
        otherLeaks,
        step,
        slope,
        terms);
  }

  public Machine withFan(Fan newFan) {
    return new Machine(
        name,
        notes,
        invented,
        air,
        floor,
        travelSpeed,
        load,
        running,
        newFan,
        power,
        valve,
        otherLeaks,
        step,
        slope,
        terms);
  }

  public Machine withPower(PowerSupply newPower) {
    return new Machine(
        name,
        notes,
        invented,
        air,
        floor,
        travelSpeed,
        load,
        running,
        fan,
        newPower,
        valve,
        otherLeaks,
        step,
        slope,
        terms);
  }

  public Machine withValve(@Nullable ReliefValve newValve) {
    return new Machine(
        name,
        notes,
        invented,
        air,
        floor,
        travelSpeed,
        load,
        running,
        fan,
        power,
        newValve,
        otherLeaks,
        step,
        slope,
        terms);
  }

  public Machine withStep(@Nullable GroundStep newStep) {
    return new Machine(
        name,
        notes,
        invented,
        air,
        floor,
        travelSpeed,
        load,
        running,
        fan,
        power,
        valve,
        otherLeaks,
        newStep,
        slope,
        terms);
  }

  public Machine withSlope(double newSlope) {
    return new Machine(
        name,
        notes,
        invented,
        air,
        floor,
        travelSpeed,
        load,
        running,
        fan,
        power,
        valve,
        otherLeaks,
        step,
        newSlope,
        terms);
  }

  public Machine withTerms(HoldTerms newTerms) {
    return new Machine(
        name,
        notes,
        invented,
        air,
        floor,
        travelSpeed,
        load,
        running,
        fan,
        power,
        valve,
        otherLeaks,
        step,
        slope,
        newTerms);
  }
}
