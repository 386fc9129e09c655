package hemline.shared.section;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A duct section: a channel with obstacles, driven by a flow or a pressure drop, or a closed cavity
 * driven by its walls. SI units.
 *
 * @param name for people
 * @param from x of the left end
 * @param to x of the right end
 * @param height of the channel; the ground is y = 0
 * @param obstacles solids on either wall or free
 * @param fluid the fluid
 * @param drive what moves the fluid; null for a cavity
 * @param inlet velocity profile at the left end; null for a cavity or a given pressure drop
 * @param lowerWall the ground
 * @param upperWall the ceiling
 * @param cavity side walls; null for a channel
 * @param stations where section means of pressure are taken; null for the two ends
 * @param gap length for coefficients
 * @param closure auto, laminar, sst, …
 */
public record DuctSection(
    String name,
    double from,
    double to,
    double height,
    List<Outline> obstacles,
    FluidState fluid,
    @Nullable Drive drive,
    @Nullable Inlet inlet,
    Wall lowerWall,
    Wall upperWall,
    @Nullable Cavity cavity,
    @Nullable Stations stations,
    double gap,
    String closure)
    implements Section {

  /** Shape of the velocity profile at the left end. */
  public enum Inlet {
    /** Couette–Poiseuille flow between the moving walls that carries the flow. */
    DEVELOPED,
    UNIFORM
  }

  /**
   * A channel wall.
   *
   * @param speed in the section plane, m/s
   * @param spanwiseSpeed m/s
   * @param frictionless true for a wall without shear
   */
  public record Wall(double speed, double spanwiseSpeed, boolean frictionless) {}

  /** Vertical speeds of the side walls of a cavity, m/s. */
  public record Cavity(double leftSpeed, double rightSpeed) {}

  /** Stations of the pressure drop, m. */
  public record Stations(double upstream, double downstream) {}

  public DuctSection {
    obstacles = List.copyOf(obstacles);
    if (!(to > from) || !(height > 0) || !(gap > 0)) {
      throw new IllegalArgumentException("a duct needs a positive length, height and gap");
    }
    if ((drive == null) == (cavity == null)) {
      throw new IllegalArgumentException("a duct is either driven or a closed cavity");
    }
  }

  @Override
  public GroundMotion ground() {
    return new GroundMotion(lowerWall.speed(), lowerWall.spanwiseSpeed());
  }

  /** The same duct with other obstacles. */
  public DuctSection withObstacles(List<Outline> others) {
    return new DuctSection(
        name, from, to, height, others, fluid, drive, inlet, lowerWall, upperWall, cavity, stations,
        gap, closure);
  }
}
