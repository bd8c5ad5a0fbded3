package plumbline.golden;

import java.util.ArrayList;
import java.util.List;
import org.commonmark.ext.autolink.AutolinkExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.Heading;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.HtmlInline;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.LinkReferenceDefinition;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.parser.IncludeSourceSpans;
import org.commonmark.parser.Parser;

/** Markdown as an independent CommonMark parser reads it, bare addresses linked. */
public final class Rendered {
  private static final Parser PARSER =
      Parser.builder()
          .extensions(List.of(AutolinkExtension.create()))
          .includeSourceSpans(IncludeSourceSpans.BLOCKS)
          .build();

  private Rendered() {}

  /** The headings, each with its level. */
  public static List<String> headings(String markdown) {
    List<String> headings = new ArrayList<>();
    PARSER
        .parse(markdown)
        .accept(
            new AbstractVisitor() {
              @Override
              public void visit(Heading heading) {
                headings.add(heading.getLevel() + " " + text(heading));
              }
            });
    return headings;
  }

  /** Everything that reports never write: HTML, links, images. */
  public static List<String> foreign(String markdown) {
    List<String> found = new ArrayList<>();
    PARSER
        .parse(markdown)
        .accept(
            new AbstractVisitor() {
              @Override
              public void visit(HtmlBlock html) {
                found.add("html " + html.getLiteral());
              }

              @Override
              public void visit(HtmlInline html) {
                found.add("html " + html.getLiteral());
              }

              @Override
              public void visit(Link link) {
                found.add("link " + link.getDestination());
              }

              @Override
              public void visit(Image image) {
                found.add("image " + image.getDestination());
              }

              @Override
              public void visit(LinkReferenceDefinition definition) {
                found.add("definition " + definition.getDestination());
              }
            });
    return found;
  }

  /** What a reader sees. */
  public static String text(String markdown) {
    return text(PARSER.parse(markdown));
  }

  /** What a reader sees that is no code. */
  public static String outsideCode(String markdown) {
    return text(PARSER.parse(markdown), false);
  }

  private static String text(Node node) {
    return text(node, true);
  }

  private static String text(Node node, boolean code) {
    StringBuilder seen = new StringBuilder();
    node.accept(
        new AbstractVisitor() {
          @Override
          public void visit(Text text) {
            seen.append(text.getLiteral());
          }

          @Override
          public void visit(Code span) {
            seen.append(code ? span.getLiteral() : " ");
          }
        });
    return seen.toString();
  }
}
