import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.form.PDCheckBox;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;

/** Fills a form by PDFBox: FillByPdfbox.java, then on stdin a line of three paths each: blank, values ("name TAB value" lines), out. */
public class FillByPdfbox {
  public static void main(String[] args) throws Exception {
    for (String job : new String(System.in.readAllBytes(), "UTF-8").split("\n")) {
      String[] paths = job.split(" ");
      try (PDDocument document = PDDocument.load(new File(paths[0]))) {
        for (String line : Files.readAllLines(Path.of(paths[1]))) {
          String[] pair = line.split("\t", 2);
          PDField field = document.getDocumentCatalog().getAcroForm().getField(pair[0]);
          if (field instanceof PDCheckBox box) box.check();
          else if (field != null) field.setValue(pair[1].replace("\\n", "\n"));
        }
        document.save(paths[2]);
      }
    }
  }
}
