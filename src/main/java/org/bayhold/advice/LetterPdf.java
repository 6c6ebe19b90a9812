package org.bayhold.advice;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Map;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Component;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;

/** Letters as PDF: tagged, so that they can be read aloud, with their fonts in them, so that every name is there. */
@Component
class LetterPdf {
    private static final String FONT = "DejaVu Sans";
    private static final String FONTS = "fonts/";
    private static final String STYLE = "css/letter.css";

    private final ITemplateEngine templates;

    LetterPdf(ITemplateEngine templates) {
        this.templates = templates;
    }

    byte[] of(Letter letter) {
        String page = templates.process("advice/letter-pdf", new Context(Locale.ENGLISH, Map.of("letter", letter)));
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.usePdfUaAccessibility(true);
        builder.useFont(() -> font("DejaVuSans.ttf"), FONT, 400, FontStyle.NORMAL, true);
        builder.useFont(() -> font("DejaVuSans-Bold.ttf"), FONT, 700, FontStyle.NORMAL, true);
        builder.withProducer("Bayhold");
        // a letter refers to its style and to nothing else, whatever a customer wrote into it
        builder.useUriResolver((base, uri) -> uri.equals(STYLE) ? style() : null);
        builder.withHtmlContent(page, null);
        builder.toStream(pdf);
        try {
            builder.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return pdf.toByteArray();
    }

    private static String style() {
        try {
            return new ClassPathResource("static/" + STYLE).getURL().toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static InputStream font(String name) {
        try {
            return new ClassPathResource(FONTS + name).getInputStream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
