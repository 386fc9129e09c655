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
 * @param channel its extent
 * @param obstacles solids on either wall or free
 * @param fluid the fluid
 * @param inflow what moves the fluid, and how it enters
 * @param walls around it
 * @param measures places and lengths of its coefficients
 * @param closure auto, laminar, sst, …
 */
public record DuctSection(
    String name,
    Channel channel,
    List<Outline> obstacles,
    FluidState fluid,
    Inflow inflow,
    Walls walls,
    Measures measures,
    String closure)
    implements Section {

  /**
   * Extent of a channel, m.
   *
   * @param from x of the left end
   * @param to x of the right end
   * @param height above the ground, y = 0
   */
  public record Channel(double from, double to, double height) {}

  /**
   * What moves the fluid.
   *
   * @param drive null for a cavity
   * @param inlet velocity profile at the left end; null for a cavity or a given pressure drop
   */
  public record Inflow(@Nullable Drive drive, @Nullable Inlet inlet) {}

  /**
   * Walls of a duct.
   *
   * @param lower the ground
   * @param upper the ceiling
   * @param cavity side walls; null for a channel
   */
  public record Walls(Wall lower, Wall upper, @Nullable Cavity cavity) {}

  /**
   * Where coefficients are measured and what they refer to.
   *
   * @param stations where section means of pressure are taken; null for the two ends
   * @param gap length for coefficients, m
   */
  public record Measures(@Nullable Stations stations, double gap) {}

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
    if (!(channel.to > channel.from) || !(channel.height > 0) || !(measures.gap > 0)) {
      throw new IllegalArgumentException("a duct needs a positive length, height and gap");
    }
    if ((inflow.drive == null) == (walls.cavity == null)) {
      throw new IllegalArgumentException("a duct is either driven or a closed cavity");
    }
  }

  @Override
  public @Nullable Drive drive() {
    return inflow.drive;
  }

  @Override
  public double gap() {
    return measures.gap;
  }

  /** x where the upstream pressure is taken, m. */
  public double upstream() {
    return measures.stations == null ? channel.from : measures.stations.upstream;
  }

  /** x where the downstream pressure is taken, m. */
  public double downstream() {
    return measures.stations == null ? channel.to : measures.stations.downstream;
  }

  @Override
  public GroundMotion ground() {
    return new GroundMotion(walls.lower().speed(), walls.lower().spanwiseSpeed());
  }

  /** The same duct with other obstacles. */
  public DuctSection withObstacles(List<Outline> others) {
    return new DuctSection(name, channel, others, fluid, inflow, walls, measures, closure);
  }
}
