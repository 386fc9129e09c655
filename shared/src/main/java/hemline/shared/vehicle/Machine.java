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
    double slope) {
  public Machine {
    otherLeaks = List.copyOf(otherLeaks);
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
        slope);
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
        slope);
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
        slope);
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
        slope);
  }
}
