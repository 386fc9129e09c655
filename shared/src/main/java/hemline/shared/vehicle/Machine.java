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

  public Machine withAir(Ambient newAir) {
    return new Machine(
        description,
        floor,
        load,
        running,
        fan,
        power,
        openings,
        new Duty(newAir, duty.travelSpeed(), duty.slope(), duty.step(), duty.terms()));
  }

  public Machine withFloor(FloorOutline newFloor) {
    return new Machine(description, newFloor, load, running, fan, power, openings, duty);
  }

  public Machine atTravelSpeed(double newTravelSpeed) {
    return new Machine(
        description,
        floor,
        load,
        running,
        fan,
        power,
        openings,
        new Duty(duty.air(), newTravelSpeed, duty.slope(), duty.step(), duty.terms()));
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

  public Machine withValve(@Nullable ReliefValve newValve) {
    return new Machine(
        description,
        floor,
        load,
        running,
        fan,
        power,
        new Openings(newValve, openings.leaks()),
        duty);
  }

  public Machine withOtherLeaks(List<OtherLeak> newLeaks) {
    return new Machine(
        description,
        floor,
        load,
        running,
        fan,
        power,
        new Openings(openings.valve(), newLeaks),
        duty);
  }

  public Machine withStep(@Nullable GroundStep newStep) {
    return new Machine(
        description,
        floor,
        load,
        running,
        fan,
        power,
        openings,
        new Duty(duty.air(), duty.travelSpeed(), duty.slope(), newStep, duty.terms()));
  }

  public Machine withSlope(double newSlope) {
    return new Machine(
        description,
        floor,
        load,
        running,
        fan,
        power,
        openings,
        new Duty(duty.air(), duty.travelSpeed(), newSlope, duty.step(), duty.terms()));
  }

  public Machine withTerms(HoldTerms newTerms) {
    return new Machine(
        description,
        floor,
        load,
        running,
        fan,
        power,
        openings,
        new Duty(duty.air(), duty.travelSpeed(), duty.slope(), duty.step(), newTerms));
  }
}
