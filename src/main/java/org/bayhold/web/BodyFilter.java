package org.bayhold.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import org.bayhold.journal.Hashing;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Problems;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/** Reads a JSON body whole, up to a limit, and takes its fingerprint, by which a repeated request is known again. */
@Component
class BodyFilter extends OncePerRequestFilter {
    static final String FINGERPRINT = "org.bayhold.fingerprint";
    static final int LIMIT_BYTES = 1024 * 1024;

    private final Problems problems;

    BodyFilter(Problems problems) {
        this.problems = problems;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        String type = request.getContentType();
        return !request.getRequestURI().startsWith("/api/") || (type != null && type.startsWith("multipart/"));
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        byte[] body = request.getInputStream().readNBytes(LIMIT_BYTES + 1);
        if (body.length > LIMIT_BYTES) {
            problems.write(Code.TOO_LARGE, request, response);
            return;
        }
        String what = request.getMethod() + " " + request.getRequestURI() + "\n";
        request.setAttribute(FINGERPRINT, Hashing.sha256(what.getBytes(StandardCharsets.UTF_8), body));
        chain.doFilter(new WithBody(request, body), response);
    }

    private static final class WithBody extends HttpServletRequestWrapper {
        private final byte[] body;

        WithBody(HttpServletRequest request, byte[] body) {
            super(request);
            this.body = body;
        }

        @Override
        public ServletInputStream getInputStream() {
            ByteArrayInputStream in = new ByteArrayInputStream(body);
            return new ServletInputStream() {
                @Override
                public int read() {
                    return in.read();
                }

                @Override
                public int read(byte[] buffer, int offset, int length) {
                    return in.read(buffer, offset, length);
                }

                @Override
                public boolean isFinished() {
                    return in.available() == 0;
                }

                @Override
                public boolean isReady() {
                    return true;
                }

                @Override
                public void setReadListener(ReadListener listener) {
                    throw new IllegalStateException("the body has been read already");
                }
            };
        }

        @Override
        public BufferedReader getReader() {
            return new BufferedReader(new InputStreamReader(getInputStream(), StandardCharsets.UTF_8));
        }
    }
}
