package plumbline.fabric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.jgrapht.Graph;
import org.jgrapht.alg.connectivity.BiconnectivityInspector;
import org.jgrapht.alg.connectivity.ConnectivityInspector;
import org.jgrapht.generate.NamedGraphGenerator;
import org.jgrapht.graph.DefaultEdge;
import org.jgrapht.graph.Multigraph;
import org.jgrapht.graph.SimpleGraph;
import org.jgrapht.util.SupplierUtil;
import org.junit.jupiter.api.Test;
import plumbline.fabric.Connectivity.Edge;

/** Cut vertices and bridges of published graphs, and of random ones against an open library. */
class ConnectivityTest {
  private static List<Edge> edges(String words) {
    List<Edge> edges = new ArrayList<>();
    for (String word : List.of(words.split(" ", -1))) {
      List<String> ends = List.of(word.split("-", -1));
      edges.add(new Edge(Integer.parseInt(ends.get(0)), Integer.parseInt(ends.get(1))));
    }
    return edges;
  }

  private static List<String> bridges(Connectivity graph, List<Edge> edges) {
    return graph.bridges().stream()
        .map(edges::get)
        .map(edge -> edge.one() + "-" + edge.other())
        .toList();
  }

  /** G1: reference page of an open graph library: two 4-cliques and a path between them. */
  @Test
  void two_cliques_joined_by_a_path() {
    String words = "0-1 0-2 0-3 1-2 1-3 2-3 3-4 4-5 5-6 6-7 6-8 6-9 7-8 7-9 8-9";
    Connectivity graph = Connectivity.of(10, edges(words));
    assertThat(graph.cutVertices()).containsExactly(3, 4, 5, 6);
    assertThat(bridges(graph, edges(words))).containsExactly("3-4", "4-5", "5-6");
    Connectivity closed = Connectivity.of(10, edges(words + " 2-8"));
    assertThat(closed.cutVertices()).isEmpty();
  }

  /** G2: the small graph of the book site of Algorithms, 4th edition, 4.1; answer derived. */
  @Test
  void the_small_graph_of_a_textbook_has_three_parts() {
    String words = "0-5 4-3 0-1 9-12 6-4 5-4 0-2 11-12 9-10 0-6 7-8 9-11 5-3";
    Connectivity graph = Connectivity.of(13, edges(words));
    assertThat(graph.cutVertices()).containsExactly(0, 9);
    assertThat(bridges(graph, edges(words))).containsExactlyInAnyOrder("0-1", "0-2", "7-8", "9-10");
    assertThat(IntStream.range(0, 13).map(graph::partOf).distinct().toArray())
        .containsExactly(0, 7, 9);
  }

  /** G3: the network of a club of 34 members, as the open library holds it: 78 edges. */
  @Test
  void the_network_of_a_club_hangs_on_its_first_member() {
    Graph<Integer, DefaultEdge> club =
        new SimpleGraph<>(
            SupplierUtil.createIntegerSupplier(), SupplierUtil.createDefaultEdgeSupplier(), false);
    new NamedGraphGenerator<Integer, DefaultEdge>().generateZacharyKarateClubGraph(club);
    List<Integer> members = club.vertexSet().stream().sorted().toList();
    List<Edge> edges =
        club.edgeSet().stream()
            .map(
                edge ->
                    new Edge(
                        members.indexOf(club.getEdgeSource(edge)),
                        members.indexOf(club.getEdgeTarget(edge))))
            .toList();
    assertThat(edges).hasSize(78);
    Connectivity graph = Connectivity.of(34, edges);
    assertThat(graph.cutVertices()).hasSize(1);
    assertThat(graph.bridges()).hasSize(1);
  }

  /** G4: the network of 15 families, in alphabetical order; answer derived with two programs. */
  @Test
  void the_network_of_fifteen_families() {
    String words =
        "1-9 2-6 2-7 2-9 3-5 3-9 4-7 4-11 4-14 5-11 5-14 7-8 7-15 9-12 9-13 9-15 10-13 11-14"
            + " 12-14 12-15";
    Connectivity graph = Connectivity.of(16, edges(words));
    assertThat(graph.cutVertices()).containsExactly(2, 7, 9, 13);
    assertThat(bridges(graph, edges(words))).containsExactly("1-9", "2-6", "7-8", "9-13", "10-13");
  }

  /**
   * Example A of the spanning-tree tests as a graph: every single link may fail, switch S1 may not
   * (Menger: two edge-disjoint paths, one vertex-disjoint path between S3 and S4).
   */
  @Test
  void no_single_link_and_yet_a_single_switch_cuts() {
    List<Edge> links = edges("1-2 1-4 1-5 1-6 1-7 2-3 3-5 4-6 5-7");
    Connectivity graph = Connectivity.of(8, links);
    assertThat(graph.bridges()).isEmpty();
    assertThat(graph.cutVertices()).containsExactly(1);
    for (int link = 0; link < links.size(); link++) {
      assertThat(graph.joinsWithoutEdge(3, 4, link)).isTrue();
    }
    assertThat(graph.joinsWithoutVertex(3, 4, 1)).isFalse();
    assertThat(graph.joinsWithoutVertex(2, 7, 1)).isTrue();
    assertThat(graph.joinsWithoutVertex(4, 6, 1)).isTrue();
  }

  @Test
  void parallel_links_are_no_bridges() {
    Connectivity graph = Connectivity.of(3, edges("0-1 1-0 1-2"));
    assertThat(graph.bridges()).containsExactly(2);
  }

  @Test
  void a_chain_may_be_longer_than_any_stack() {
    int length = 200_000;
    Connectivity graph =
        Connectivity.of(
            length, IntStream.range(1, length).mapToObj(at -> new Edge(at - 1, at)).toList());
    assertThat(graph.cutVertices()).hasSize(length - 2);
    assertThat(graph.joinsWithoutVertex(0, length - 1, 77)).isFalse();
    assertThat(graph.joinsWithoutVertex(78, length - 1, 77)).isTrue();
  }

  @Property(tries = 500)
  void every_answer_is_that_of_removing_the_thing_and_searching_again(@ForAll long seed) {
    Random random = new Random(seed);
    int vertices = 1 + random.nextInt(12);
    List<Edge> edges =
        IntStream.range(0, random.nextInt(2 * vertices))
            .mapToObj(any -> new Edge(random.nextInt(vertices), random.nextInt(vertices)))
            .filter(edge -> edge.one() != edge.other())
            .toList();
    Connectivity fast = Connectivity.of(vertices, edges);
    BiconnectivityInspector<Integer, Integer> library =
        new BiconnectivityInspector<>(graph(vertices, edges));
    assertThat(fast.cutVertices()).isEqualTo(sorted(library.getCutpoints()));
    assertThat(fast.bridges()).isEqualTo(sorted(library.getBridges()));
    for (int failed = 0; failed < vertices; failed++) {
      Graph<Integer, Integer> less = graph(vertices, edges);
      less.removeVertex(failed);
      ConnectivityInspector<Integer, Integer> rest = new ConnectivityInspector<>(less);
      for (int one = 0; one < vertices; one++) {
        for (int other = 0; other < vertices; other++) {
          boolean slow = one != failed && other != failed && rest.pathExists(one, other);
          assertThat(fast.joinsWithoutVertex(one, other, failed)).isEqualTo(slow);
        }
      }
    }
    for (int failed = 0; failed < edges.size(); failed++) {
      Graph<Integer, Integer> less = graph(vertices, edges);
      less.removeEdge(Integer.valueOf(failed));
      ConnectivityInspector<Integer, Integer> rest = new ConnectivityInspector<>(less);
      for (int one = 0; one < vertices; one++) {
        for (int other = 0; other < vertices; other++) {
          assertThat(fast.joinsWithoutEdge(one, other, failed))
              .isEqualTo(rest.pathExists(one, other));
        }
      }
    }
  }

  private static Graph<Integer, Integer> graph(int vertices, List<Edge> edges) {
    Graph<Integer, Integer> graph = new Multigraph<>(null, null, false);
    IntStream.range(0, vertices).forEach(graph::addVertex);
    for (int edge = 0; edge < edges.size(); edge++) {
      graph.addEdge(edges.get(edge).one(), edges.get(edge).other(), edge);
    }
    return graph;
  }

  private static List<Integer> sorted(Collection<Integer> of) {
    return of.stream().sorted().collect(Collectors.toList());
  }
}
