package hemline.shared.vehicle;

import java.util.List;
import java.util.function.Consumer;
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
 * @param step dip or ledge of the ground to cross; null when none is asked
 * @param slope steepest slope it must climb, rad
 * @param terms what its hold must meet
 */
public record Machine(
    String name,
    String notes,
    boolean invented,
    Ambient air,
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
      Ambient air,
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

  public Machine withAir(Ambient newAir) {
    return changed(d -> d.air = newAir);
  }

  public Machine withFloor(FloorOutline newFloor) {
    return changed(d -> d.floor = newFloor);
  }

  public Machine atTravelSpeed(double newTravelSpeed) {
    return changed(d -> d.travelSpeed = newTravelSpeed);
  }

  public Machine withLoad(Load newLoad) {
    return changed(d -> d.load = newLoad);
  }

  public Machine withRunning(Running newRunning) {
    return changed(d -> d.running = newRunning);
  }

  public Machine withFan(Fan newFan) {
    return changed(d -> d.fan = newFan);
  }

  public Machine withPower(PowerSupply newPower) {
    return changed(d -> d.power = newPower);
  }

  public Machine withValve(@Nullable ReliefValve newValve) {
    return changed(d -> d.valve = newValve);
  }

  public Machine withOtherLeaks(List<OtherLeak> newOtherLeaks) {
    return changed(d -> d.otherLeaks = newOtherLeaks);
  }

  public Machine withStep(@Nullable GroundStep newStep) {
    return changed(d -> d.step = newStep);
  }

  public Machine withSlope(double newSlope) {
    return changed(d -> d.slope = newSlope);
  }

  public Machine withTerms(HoldTerms newTerms) {
    return changed(d -> d.terms = newTerms);
  }

  private Machine changed(Consumer<Draft> change) {
    Draft draft = new Draft(this);
    change.accept(draft);
    return draft.machine();
  }

  /** A machine of which one thing is being changed. */
  private static final class Draft {
    private final Machine was;
    private Ambient air;
    private FloorOutline floor;
    private double travelSpeed;
    private Load load;
    private Running running;
    private Fan fan;
    private PowerSupply power;
    private @Nullable ReliefValve valve;
    private List<OtherLeak> otherLeaks;
    private @Nullable GroundStep step;
    private double slope;
    private HoldTerms terms;

    Draft(Machine was) {
      this.was = was;
      air = was.air;
      floor = was.floor;
      travelSpeed = was.travelSpeed;
      load = was.load;
      running = was.running;
      fan = was.fan;
      power = was.power;
      valve = was.valve;
      otherLeaks = was.otherLeaks;
      step = was.step;
      slope = was.slope;
      terms = was.terms;
    }

    Machine machine() {
      return new Machine(
          was.name,
          was.notes,
          was.invented,
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
          terms);
    }
  }
}
