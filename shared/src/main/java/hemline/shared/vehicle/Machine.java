package hemline.shared.vehicle;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A machine held down by suction.
 *
 * @param description what it is called
 * @param floor outline, seal and ceiling height
 * @param load mass and centre of gravity
 * @param running wheels and drive
 * @param fan suction fan
 * @param power motor and battery of the fan
 * @param openings where air enters beside the seal
 * @param duty what it is asked to do
 */
public record Machine(
    Description description,
    FloorOutline floor,
    Load load,
    Running running,
    Fan fan,
    PowerSupply power,
    Openings openings,
    Duty duty) {

  /**
   * What a machine is called.
   *
   * @param name for people
   * @param notes free text
   * @param invented true when its figures are made up
   */
  public record Description(String name, String notes, boolean invented) {}

  public Machine withFloor(FloorOutline newFloor) {
    return new Machine(description, newFloor, load, running, fan, power, openings, duty);
  }

  public Machine withLoad(Load newLoad) {
    return new Machine(description, floor, newLoad, running, fan, power, openings, duty);
  }

  public Machine withRunning(Running newRunning) {
    return new Machine(description, floor, load, newRunning, fan, power, openings, duty);
  }

  public Machine withFan(Fan newFan) {
    return new Machine(description, floor, load, running, newFan, power, openings, duty);
  }

  public Machine withPower(PowerSupply newPower) {
    return new Machine(description, floor, load, running, fan, newPower, openings, duty);
  }

  public Machine withValve(@Nullable ReliefValve valve) {
    return with(new Openings(valve, openings.leaks()));
  }

  public Machine withOtherLeaks(List<OtherLeak> leaks) {
    return with(new Openings(openings.valve(), leaks));
  }

  public Machine withAir(Ambient air) {
    return with(new Duty(air, duty.travelSpeed(), duty.slope(), duty.step(), duty.terms()));
  }

  public Machine atTravelSpeed(double speed) {
    return with(new Duty(duty.air(), speed, duty.slope(), duty.step(), duty.terms()));
  }

  public Machine withSlope(double slope) {
    return with(new Duty(duty.air(), duty.travelSpeed(), slope, duty.step(), duty.terms()));
  }

  public Machine withStep(@Nullable GroundStep step) {
    return with(new Duty(duty.air(), duty.travelSpeed(), duty.slope(), step, duty.terms()));
  }

  public Machine withTerms(HoldTerms terms) {
    return with(new Duty(duty.air(), duty.travelSpeed(), duty.slope(), duty.step(), terms));
  }

  private Machine with(Openings newOpenings) {
    return new Machine(description, floor, load, running, fan, power, newOpenings, duty);
  }

  private Machine with(Duty newDuty) {
    return new Machine(description, floor, load, running, fan, power, openings, newDuty);
  }
}
