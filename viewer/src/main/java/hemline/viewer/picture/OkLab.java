package hemline.viewer.picture;

/**
 * Colours in a space where equal steps look equal: B. Ottosson, "A perceptual color space for image
 * processing" (2020). The coefficients are from memory; a test checks that both ways agree and that
 * white and greys come out colourless.
 *
 * @param light lightness, 0 black to 1 white
 * @param a green to red
 * @param b blue to yellow
 */
public record OkLab(double light, double a, double b) {

  /** From lightness, strength of colour and hue in degrees. */
  public static OkLab polar(double light, double chroma, double hue) {
    double h = Math.toRadians(hue);
    return new OkLab(light, chroma * Math.cos(h), chroma * Math.sin(h));
  }

  public static OkLab of(int rgb) {
    double r = linear((rgb >> 16 & 255) / 255.0);
    double g = linear((rgb >> 8 & 255) / 255.0);
    double bl = linear((rgb & 255) / 255.0);
    double l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * bl);
    double m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * bl);
    double s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * bl);
    return new OkLab(
        0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
        1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
        0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s);
  }

  /** Nearest displayable colour, 0xRRGGBB. */
  public int rgb() {
    double l = cube(light + 0.3963377774 * a + 0.2158037573 * b);
    double m = cube(light - 0.1055613458 * a - 0.0638541728 * b);
    double s = cube(light - 0.0894841775 * a - 1.2914855480 * b);
    return byteOf(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s) << 16
        | byteOf(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s) << 8
        | byteOf(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s);
  }

  public OkLab mix(OkLab other, double share) {
    return new OkLab(
        light + share * (other.light - light),
        a + share * (other.a - a),
        b + share * (other.b - b));
  }

  /** How different two colours look. */
  public double distance(OkLab other) {
    return Math.sqrt(
        (light - other.light) * (light - other.light)
            + (a - other.a) * (a - other.a)
            + (b - other.b) * (b - other.b));
  }

  private static double cube(double x) {
    return x * x * x;
  }

  /** Display value to light, IEC 61966-2-1. */
  public static double linear(double c) {
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }

  private static int byteOf(double light) {
    double c = light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
    return (int) Math.max(0, Math.min(255, Math.round(255 * c)));
  }
}
