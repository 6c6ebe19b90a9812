package org.bayhold.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.JsonReasons;
import org.bayhold.refusal.Problems;
import org.bayhold.refusal.Problems.FieldError;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.ResolvableType;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.dao.QueryTimeoutException;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.transaction.CannotCreateTransactionException;
import org.springframework.web.ErrorResponse;
import org.springframework.web.bind.MethodArgumentNotValidException;
import org.springframework.web.bind.MissingServletRequestParameterException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.method.annotation.HandlerMethodValidationException;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.servlet.ModelAndView;

/** Every refusal and every failure as a problem that says what to do and tells nothing of the inside. */
@RestControllerAdvice
class ProblemAdvice {
    private static final Logger LOG = LoggerFactory.getLogger(ProblemAdvice.class);

    private final Problems problems;

    ProblemAdvice(Problems problems) {
        this.problems = problems;
    }

    @ExceptionHandler
    Object refused(Refusal refusal, HttpServletRequest request, HttpServletResponse response) {
        Problems.retryAfter(refusal.code(), response);
        return answer(refusal.code(), problems.of(refusal, request), request);
    }

    @ExceptionHandler
    Object invalid(MethodArgumentNotValidException failure, HttpServletRequest request) {
        List<FieldError> errors = failure.getBindingResult().getAllErrors().stream()
                .map(error -> new FieldError(
                        error instanceof org.springframework.validation.FieldError field ? field.getField() : null,
                        String.valueOf(error.getDefaultMessage())))
                .map(error -> new FieldError(error.field(), named(error)))
                .sorted(java.util.Comparator.comparing(error -> String.valueOf(error.field())))
                .toList();
        return answer(Code.INVALID, problems.of(Code.INVALID, errors, request), request);
    }

    private static String named(FieldError error) {
        return error.field() == null ? error.message() : error.field() + " " + error.message() + ".";
    }

    @ExceptionHandler
    Object invalid(HandlerMethodValidationException failure, HttpServletRequest request) {
        List<FieldError> errors = failure.getParameterValidationResults().stream()
                .flatMap(result -> result.getResolvableErrors().stream()
                        .map(error -> new FieldError(
                                result.getMethodParameter().getParameterName(),
                                result.getMethodParameter().getParameterName() + " " + error.getDefaultMessage()
                                        + ".")))
                .toList();
        return answer(Code.INVALID, problems.of(Code.INVALID, errors, request), request);
    }

    @ExceptionHandler
    Object unreadable(HttpMessageNotReadableException failure, HttpServletRequest request) {
        return refusedAs(JsonReasons.of(failure.getCause()), request);
    }

    @ExceptionHandler
    Object mismatch(MethodArgumentTypeMismatchException failure, HttpServletRequest request) {
        if (Addresses.isPage(request)) {
            return answer(Code.NOT_FOUND, problems.of(Code.NOT_FOUND, List.of(), request), request);
        }
        Class<?> wanted = wanted(failure);
        String kind = wanted == null ? "value" : wanted.getSimpleName().toLowerCase(java.util.Locale.ROOT);
        String allowed = wanted != null && wanted.isEnum()
                ? List.of(wanted.getEnumConstants()).stream()
                        .map(String::valueOf)
                        .collect(Collectors.joining(", "))
                : kind;
        return refusedAs(Refusal.invalid(failure.getName(), "parameter.type", failure.getName(), allowed), request);
    }

    /** What one value must be; of a parameter that may come several times, one of them. */
    private static @Nullable Class<?> wanted(MethodArgumentTypeMismatchException failure) {
        Class<?> wanted = failure.getRequiredType();
        return wanted != null && Collection.class.isAssignableFrom(wanted)
                ? ResolvableType.forMethodParameter(failure.getParameter()).resolveGeneric(0)
                : wanted;
    }

    @ExceptionHandler
    Object missing(MissingServletRequestParameterException failure, HttpServletRequest request) {
        String name = failure.getParameterName();
        return refusedAs(Refusal.invalid(name, "parameter.missing", name), request);
    }

    @ExceptionHandler({
        CannotCreateTransactionException.class,
        DataAccessResourceFailureException.class,
        QueryTimeoutException.class
    })
    Object unavailable(Exception failure, HttpServletRequest request, HttpServletResponse response) {
        LOG.error("the database did not answer", failure);
        Problems.retryAfter(Code.UNAVAILABLE, response);
        return answer(Code.UNAVAILABLE, problems.of(Code.UNAVAILABLE, List.of(), request), request);
    }

    /** @throws Exception the failure itself where half an answer is out: the connection breaks, and the caller notices */
    @ExceptionHandler
    Object other(Exception failure, HttpServletRequest request, HttpServletResponse response) throws Exception {
        if (response.isCommitted()) {
            throw failure;
        }
        Code code = failure instanceof ErrorResponse known ? code(known.getStatusCode()) : Code.INTERNAL;
        if (code == Code.INTERNAL) {
            LOG.error("a request failed", failure);
        }
        return answer(code, problems.of(code, List.of(), request), request);
    }

    private static Code code(HttpStatusCode status) {
        return switch (status.value()) {
            case 400 -> Code.INVALID;
            case 404 -> Code.NOT_FOUND;
            case 405 -> Code.METHOD_NOT_ALLOWED;
            case 406 -> Code.NOT_ACCEPTABLE;
            case 413 -> Code.TOO_LARGE;
            case 415 -> Code.UNSUPPORTED;
            case 503 -> Code.UNAVAILABLE;
            default -> Code.INTERNAL;
        };
    }

    private Object refusedAs(Refusal refusal, HttpServletRequest request) {
        return answer(refusal.code(), problems.of(refusal, request), request);
    }

    /** A program gets the problem itself, a person a page that says the same. */
    private static Object answer(Code code, ProblemDetail problem, HttpServletRequest request) {
        if (Addresses.isPage(request)) {
            ModelAndView page = new ModelAndView("error/refusal", Map.of("code", code.slug(), "problem", problem));
            page.setStatus(HttpStatusCode.valueOf(code.status()));
            return page;
        }
        return ResponseEntity.status(code.status())
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(problem);
    }
}
