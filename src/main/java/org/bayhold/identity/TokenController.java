package org.bayhold.identity;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.bayhold.identity.AccessTokens.NewToken;
import org.bayhold.identity.AccessTokens.TokenView;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** Sign-in of the API. */
@RestController
@RequestMapping("/api/v1/tokens")
class TokenController {
    private final AccessTokens tokens;

    TokenController(AccessTokens tokens) {
        this.tokens = tokens;
    }

    /** What a new token is called, and whether it may sign. */
    record NewTokenRequest(
            @NotBlank @Size(max = 100) String label,
            @Nullable Boolean signs) {}

    /** The tokens of one user. */
    record TokenList(List<TokenView> items) {}

    @Needs(Act.OWN_TOKENS)
    @PostMapping
    ResponseEntity<NewToken> make(Caller caller, @Valid @RequestBody NewTokenRequest request) {
        NewToken token = tokens.make(caller, request.label(), request.signs());
        return ResponseEntity.created(URI.create("/api/v1/tokens/" + token.id()))
                .body(token);
    }

    @Needs(Act.OWN_TOKENS)
    @GetMapping
    TokenList list(Caller caller) {
        return new TokenList(tokens.of(caller));
    }

    @Needs(Act.OWN_TOKENS)
    @DeleteMapping("/{id}")
    ResponseEntity<Void> revoke(Caller caller, @PathVariable UUID id) {
        tokens.revoke(caller, id);
        return ResponseEntity.noContent().build();
    }
}
