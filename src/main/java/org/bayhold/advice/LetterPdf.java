package org.bayhold.advice;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.slf4j.Slf4jLogger;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
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
    private static final String STYLE = "<link rel=\"stylesheet\" href=\"letter.css\"/>";

    private final ITemplateEngine templates;

    LetterPdf(ITemplateEngine templates) {
        this.templates = templates;
        XRLog.setLoggerImpl(new Slf4jLogger());
    }

    byte[] of(Letter letter) {
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.usePdfUaAccessibility(true);
        builder.useFont(() -> resource("fonts/DejaVuSans.ttf"), FONT, 400, FontStyle.NORMAL, true);
        builder.useFont(() -> resource("fonts/DejaVuSans-Bold.ttf"), FONT, 700, FontStyle.NORMAL, true);
        builder.withProducer("Bayhold");
        // a letter reads nothing from anywhere, whatever a customer wrote into it
        builder.useUriResolver((base, uri) -> null);
        builder.withHtmlContent(page(letter), null);
        builder.toStream(pdf);
        try {
            builder.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return pdf.toByteArray();
    }

    private String page(Letter letter) {
        String page = templates.process("advice/letter-pdf", new Context(Locale.ENGLISH, Map.of("letter", letter)));
        if (!page.contains(STYLE)) {
            throw new IllegalStateException("the letter has lost its style");
        }
        try (InputStream style = resource("templates/advice/letter.css")) {
            return page.replace(
                    STYLE, "<style>" + new String(style.readAllBytes(), StandardCharsets.UTF_8) + "</style>");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static InputStream resource(String path) {
        try {
            return new ClassPathResource(path).getInputStream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
