package hemline.shared.file;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import java.awt.geom.AffineTransform;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParser;
import javax.xml.parsers.SAXParserFactory;
import org.apache.batik.parser.AWTTransformProducer;
import org.apache.batik.parser.ParseException;
import org.jspecify.annotations.Nullable;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.Locator;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.helpers.DefaultHandler;

/** Walks the elements of an SVG text; nothing outside the text is ever fetched. */
final class SvgReader extends DefaultHandler {
  /** Millimetres of one CSS pixel: 96 to the inch. */
  private static final double PIXEL = 25.4 / 96;

  private static final Map<String, Double> UNITS =
      Map.of(
          "", PIXEL, "px", PIXEL, "mm", 1.0, "cm", 10.0, "in", 25.4, "pt", 25.4 / 72, "pc",
          25.4 / 6, "Q", 0.25);

  private static final Pattern LENGTH =
      Pattern.compile(
          "\\s*([+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d{1,2})?)\\s*([a-zA-Z%]*)\\s*");

  /** Elements whose content is not drawn where it stands. */
  private static final Set<String> HIDDEN =
      Set.of("defs", "symbol", "clipPath", "mask", "pattern", "marker", "metadata");

  private static final Set<String> SHAPES =
      Set.of("path", "polygon", "polyline", "line", "rect", "circle", "ellipse");

  private static final Set<String> LOST = Set.of("use", "text", "image", "foreignObject", "switch");

  /** Most corners of a drawing; a curve counts as the arcs it is turned into. */
  static final int MOST_CORNERS = 100_000;

  /** Deepest nesting of elements. */
  private static final int DEEPEST = 100;

  /** Most characters that entities may unfold to, and most entities, in the whole text. */
  private static final Map<String, String> ENTITY_LIMITS =
      Map.of(
          "entityExpansionLimit", "1000",
          "totalEntitySizeLimit", "200000",
          "maxGeneralEntitySizeLimit", "100000",
          "maxXMLNameLimit", "1000");

  private final String file;
  private final List<Contour> contours = new ArrayList<>();
  private final List<Notice> notices = new ArrayList<>();
  private final Map<String, Integer> passedOver = new TreeMap<>();
  private final Deque<AffineTransform> transforms = new ArrayDeque<>();
  private @Nullable Locator locator;
  private int hidden;
  private int corners;
  private boolean started;

  private SvgReader(String file) {
    this.file = file;
  }

  static ImportedOutlines read(byte[] bytes, String file) throws InputException {
    SvgReader reader = new SvgReader(file);
    try {
      InputSource source = new InputSource(new ByteArrayInputStream(bytes));
      source.setSystemId("drawing");
      parser().parse(source, reader);
    } catch (Fault e) {
      throw new InputException(e.code, reader.place(), firstLine(e.getMessage()));
    } catch (SAXParseException e) {
      throw new InputException(
          "drawing.form",
          file + ", line " + Math.max(1, e.getLineNumber()),
          "this is no sound SVG: " + firstLine(e.getMessage()));
    } catch (SAXException e) {
      throw new InputException(
          "drawing.form", file, "this is no sound SVG: " + firstLine(e.getMessage()));
    } catch (IOException e) {
      // malformed bytes of the declared encoding
      throw new InputException(
          "drawing.form", file, "this is no sound SVG: " + firstLine(e.getMessage()));
    }
    reader.passedOver.forEach(
        (type, count) -> reader.notices.add(NoticeKind.SVG_SKIPPED.of(type, count)));
    return ContourJoiner.join(reader.contours, file, reader.notices);
  }

  private static SAXParser parser() {
    try {
      SAXParserFactory factory = SAXParserFactory.newInstance();
      factory.setNamespaceAware(true);
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://xml.org/sax/features/external-general-entities", false);
      factory.setFeature("http://xml.org/sax/features/external-parameter-entities", false);
      factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
      SAXParser parser = factory.newSAXParser();
      parser.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
      parser.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
      for (Map.Entry<String, String> limit : ENTITY_LIMITS.entrySet()) {
        parser.setProperty(
            "http://www.oracle.com/xml/jaxp/properties/" + limit.getKey(), limit.getValue());
      }
      return parser;
    } catch (ParserConfigurationException | SAXException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A fault of the drawing found while walking it. */
  private static final class Fault extends SAXException {
    private static final long serialVersionUID = 1L;
    private final String code;

    Fault(String code, String text) {
      super(text);
      this.code = code;
    }
  }

  @Override
  public void setDocumentLocator(Locator locator) {
    this.locator = locator;
  }

  @Override
  public InputSource resolveEntity(@Nullable String publicId, String systemId) {
    return new InputSource(new StringReader(""));
  }

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes)
      throws SAXException {
    if (!started) {
      started = true;
      if (!name.equals("svg")) {
        throw new Fault("drawing.form", "the file begins with <" + name + ">, not with <svg>");
      }
      transforms.push(page(attributes));
      return;
    }
    if (hidden + transforms.size() > DEEPEST) {
      throw new Fault(
          "drawing.form",
          "elements lie more than " + DEEPEST + " deep in each other; ungroup them");
    }
    if (hidden > 0 || HIDDEN.contains(name) || invisible(attributes)) {
      hidden++;
      return;
    }
    AffineTransform here = new AffineTransform(transforms.element());
    String own = attributes.getValue("transform");
    if (own != null) {
      try {
        here.concatenate(AWTTransformProducer.createAffineTransform(own));
      } catch (ParseException e) {
        throw new Fault(
            "drawing.form",
            "the transform of <" + name + "> is not sound: " + firstLine(e.getMessage()));
      }
    }
    transforms.push(here);
    if (LOST.contains(name) || name.equals("svg")) {
      passedOver.merge("<" + name + ">", 1, Integer::sum);
      hidden++;
      transforms.pop();
    } else if (SHAPES.contains(name)) {
      try {
        SvgShape shape = new SvgShape(name, attributes, here, origin(name), MOST_CORNERS - corners);
        for (Contour contour : shape.contours()) {
          corners += contour.vertices().size();
          contours.add(contour);
        }
      } catch (ParseException e) {
        throw new Fault(
            "drawing.form",
            "the data of <" + name + "> is not sound: " + firstLine(e.getMessage()));
      } catch (SvgShape.TooMany e) {
        throw new Fault(
            "drawing.size",
            "the drawing has more than "
                + MOST_CORNERS
                + " corners, curves counted as arcs; leave out what is no outline of the lip");
      } catch (SvgShape.Unsound e) {
        throw new Fault("drawing.form", "<" + name + ">: " + e.getMessage());
      }
    }
  }

  @Override
  public void endElement(String uri, String name, String qName) {
    if (hidden > 0) {
      hidden--;
    } else {
      transforms.pop();
    }
  }

  private static boolean invisible(Attributes attributes) {
    String style = attributes.getValue("style");
    return "none".equals(attributes.getValue("display"))
        || (style != null && style.replace(" ", "").contains("display:none"));
  }

  /** Transform from user units to metres with y up. */
  private AffineTransform page(Attributes attributes) throws Fault {
    double[] box = viewBox(attributes.getValue("viewBox"));
    double width = millimetres(attributes.getValue("width"));
    double height = millimetres(attributes.getValue("height"));
    double scale = PIXEL;
    if (box != null && (width > 0 || height > 0)) {
      double across = width > 0 ? width / box[2] : Double.POSITIVE_INFINITY;
      double up = height > 0 ? height / box[3] : Double.POSITIVE_INFINITY;
      scale = Math.min(across, up);
    } else if (width <= 0 && height <= 0) {
      notices.add(NoticeKind.SVG_UNIT.of());
    }
    double bottom = box == null ? 0 : box[1] + box[3];
    AffineTransform page = AffineTransform.getScaleInstance(1e-3 * scale, -1e-3 * scale);
    page.translate(box == null ? 0 : -box[0], -bottom);
    return page;
  }

  private static double @Nullable [] viewBox(@Nullable String text) throws Fault {
    if (text == null) {
      return null;
    }
    String[] parts = text.strip().split("[\\s,]+");
    double[] box = new double[4];
    boolean sound = parts.length == 4;
    for (int i = 0; i < 4 && sound; i++) {
      sound =
          parts[i].length() < 40
              && parts[i].matches("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,2})?");
      box[i] = sound ? Double.parseDouble(parts[i]) : 0;
    }
    if (!sound || !(box[2] > 0) || !(box[3] > 0)) {
      throw new Fault("drawing.form", "the viewBox must be four numbers, the last two positive");
    }
    return box;
  }

  /** A length with its unit in mm; 0 where it is absent or a percentage. */
  private static double millimetres(@Nullable String text) throws Fault {
    if (text == null) {
      return 0;
    }
    Matcher m = LENGTH.matcher(text);
    Double unit = m.matches() ? UNITS.get(m.group(2)) : null;
    if (m.matches() && m.group(2).equals("%")) {
      return 0;
    }
    if (unit == null || text.length() > 60) {
      throw new Fault("drawing.unit", "width and height must be lengths such as 80mm");
    }
    return unit * Double.parseDouble(m.group(1));
  }

  private String origin(String name) {
    return "<" + name + "> in line " + line();
  }

  private int line() {
    return locator == null ? 1 : Math.max(1, locator.getLineNumber());
  }

  private String place() {
    return file + ", line " + line();
  }

  private static String firstLine(@Nullable String text) {
    return text == null ? "unknown fault" : text.lines().findFirst().orElse("").strip();
  }
}
