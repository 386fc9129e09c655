package hemline.solver.linear;

/**
 * Where the unknowns of a conductance network lie on a rectangle of places, and its links between
 * neighbouring places.
 *
 * <p>An unknown may hold several places, and a place may be empty. An unknown without a place, or a
 * link between unknowns that do not hold the places on its sides, is allowed.
 *
 * @param size number of unknowns
 * @param nx places in a row
 * @param ny rows
 * @param unknownAt unknown at place (i, j), index {@code j * nx + i}, or -1; not modified
 * @param first unknown of each link on the side of the lower place; not modified
 * @param second unknown of each link on the other side; not modified
 * @param alongX true for a link to the next place of a row, false for one to the next row; not
 *     modified
 * @param lowerPlace index of the lower place of each link; not modified
 */
public record PlaceGrid(
    int size,
    int nx,
    int ny,
    int[] unknownAt,
    int[] first,
    int[] second,
    boolean[] alongX,
    int[] lowerPlace) {}
