package io.github.roundstar.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import io.github.roundstar.results.NightResult;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** What every page and every JSON file must be, whatever the night. */
final class Soundness {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private Soundness() {}

  /**
   * A page that an XML parser reads, but for its script; and a JSON file that its schema accepts.
   */
  static void check(Path page, Path json, String kind) throws Exception {
    Document document = page(page);
    assertThat(document.getElementsByTagName("h1").getLength()).isEqualTo(1);
    assertThat(document.getDocumentElement().getTextContent())
        .doesNotContain("NaN", "Infinity")
        .doesNotContainPattern("\\bnull\\b");
    assertThat(schema(kind).validate(MAPPER.readTree(Files.readAllBytes(json)))).isEmpty();
  }

  static Document page(Path page) throws IOException, ParserConfigurationException, SAXException {
    String html = Files.readString(page);
    int script = html.indexOf("<script>");
    String markup =
        script < 0
            ? html
            : html.substring(0, script + 8) + html.substring(html.indexOf("</script>"));
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(markup)));
  }

  private static JsonSchema schema(String kind) throws IOException {
    try (InputStream in =
        NightResult.class.getResourceAsStream("/schema/roundstar." + kind + "-1.schema.json")) {
      return JsonSchemaFactory.getInstance(VersionFlag.V202012).getSchema(in);
    }
  }
}
