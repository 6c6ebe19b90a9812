package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;
import tools.jackson.databind.JsonNode;

/** The shop and its people, each with a token. */
public final class Shop {
    private final URI server;
    private final String password;
    private final Map<Role, Api> people = new EnumMap<>(Role.class);
    private final Map<Role, Visitor> signedIn = new EnumMap<>(Role.class);

    Shop(URI server, String password) {
        this.server = server;
        this.password = password;
    }

    /** A new shop asks for them; most tests are about something else. Nothing to do where the server answers nothing. */
    void asksForNoDriveLogs() {
        Answer token = withPassword(Role.MANAGER).post("/tokens", Body.of("label", "begins the shop"));
        if (token.status() != 201) {
            return;
        }
        Api manager = anonymous().withToken(token.field("token"));
        Answer policy = manager.get("/policy");
        if (policy.status() == 200 && policy.json().path("driveLogRequired").asBoolean()) {
            manager.put("/policy", Body.of("driveLogRequired", false)).is(200);
        }
    }

    /** Calls in the name of the one user who has {@code role}. */
    public synchronized Api as(Role role) {
        return people.computeIfAbsent(role, r -> withNewToken(r, r.signs()));
    }

    public Api withNewToken(Role role, boolean signs) {
        return anonymous().withToken(newToken(role, signs).field("token"));
    }

    public Answer newToken(Role role, boolean signs) {
        Body body = Body.of("label", "bench laptop").with("signs", signs);
        Answer answer = withPassword(role).post("/tokens", body);
        while (answer.status() == 429) { // after a test of wrong passwords
            Eventually.pause(Duration.ofSeconds(1));
            answer = withPassword(role).post("/tokens", body);
        }
        return answer.is(201);
    }

    /** Somebody tries a name and a password. */
    public Answer guesses(String user, String guess) {
        return anonymous().withBasic(user, guess).post("/tokens", Body.of("label", "guess"));
    }

    public Api withPassword(Role role) {
        return anonymous().withBasic(role.user(), password);
    }

    /** A browser with nobody signed in. */
    public Visitor visitor() {
        return new Visitor(server);
    }

    /** A browser in which the one user who has {@code role} is signed in, in one session for all who ask. */
    public synchronized Visitor visitor(Role role) {
        return signedIn.computeIfAbsent(role, this::newVisitor).again();
    }

    /** The same in a session of its own, which may be ended. */
    public Visitor newVisitor(Role role) {
        Visitor visitor = visitor();
        Visitor.Shown ignored = visitor.signsIn(role.user(), password).is(200);
        return visitor;
    }

    /** The password of every demo user. */
    public String password() {
        return password;
    }

    public Api anonymous() {
        return Api.anonymous(server);
    }

    public Car registers(Body car) {
        Answer registered = as(Role.WRITER).post("/vehicles", car).is(201);
        return new Car(this, registered.id(), car);
    }

    public URI address() {
        return server;
    }

    /** Signs in by the form. */
    public void signIn(Screen screen, Role role) {
        screen.to("/sign-in")
                .type("User name", role.user())
                .type("Password", password)
                .press("Sign in");
    }

    /** A car that is registered already. */
    public Car find(String vehicleId) {
        Answer car = as(Role.WRITER).get("/vehicles/" + vehicleId).is(200);
        return new Car(this, vehicleId, Body.of("vin", car.field("vin")).with("ecuHardware", car.field("ecuHardware")));
    }

    /** A part spec in the catalogue. */
    public Part catalogues(Body part) {
        String id = as(Role.WRITER).post("/part-specs", part).is(201).id();
        return new Part(id, part.text("category"), part.text("maker"), part.text("partNumber"));
    }

    public Part aPartFor(String category) {
        return catalogues(Facts.aPart(category));
    }

    /** Injectors of this flow at 300 kPa. */
    public Part injectors(double ccPerMin) {
        return catalogues(Facts.aPart("INJECTORS").with("attributes", Facts.flows(ccPerMin)));
    }

    /** A car that was calibrated for these parts, and may leave. */
    public Car aCarCalibratedFor(Part... parts) {
        Car car = registers(Facts.aCar());
        RevisionDraft draft = RevisionDraft.forThe(car);
        for (Part part : parts) {
            car.fits(part);
            draft = draft.covers(part);
        }
        return car.isFinishedWith(issues(draft));
    }

    public Calibration issues(RevisionDraft draft) {
        Body body = draft.toSend();
        String id = as(Role.CALIBRATOR).post("/calibrations", body).is(201).id();
        return new Calibration(id, body.text("name"), body.text("calid"), body.text("cvn"), body.text("fileSha256"));
    }

    /** A car whose intake was changed and whose calibration was written for it. */
    public FinishedCar finishesACar() {
        Car car = registers(Facts.aCar());
        Part intake = aPartFor("AIR_INTAKE");
        Answer install = car.fits(intake);
        Calibration calibration = issues(RevisionDraft.forThe(car).covers(intake));
        Answer flash = car.flashes(calibration);
        Answer readBack = car.readsBack(calibration);
        car.clears("FLASHED");
        car.acknowledges();
        car.gate().isClear();
        return new FinishedCar(car, intake, calibration, install, flash, readBack);
    }

    /** The answer to "may I run this part with my calibration?". */
    public Answer asks(Body question) {
        return as(Role.WRITER).post("/advice", question).is(201);
    }

    public Answer withdraws(Calibration calibration) {
        Body reason = Body.of("reason", "leans out above five thousand");
        return as(Role.CALIBRATOR)
                .post("/calibrations/" + calibration.id() + "/withdrawal", reason)
                .is(200);
    }

    public Answer corrects(Part part) {
        Body correction = Body.of("attributes", Body.of("note", "the second edition"))
                .with("reason", "the maker's sheet was wrong");
        return as(Role.CALIBRATOR)
                .post("/part-specs/" + part.id() + "/corrections", correction)
                .is(201);
    }

    public JsonNode policy() {
        return as(Role.MANAGER).get("/policy").is(200).json();
    }

    /** Runs {@code work} while the policy says {@code value}, then puts back what it said before. */
    public void whilePolicySays(String field, Object value, Runnable work) {
        JsonNode before = policy().path(field);
        assertThat(before.isMissingNode()).as("policy names %s", field).isFalse();
        as(Role.MANAGER).put("/policy", Body.of(field, value)).is(200);
        try {
            work.run();
        } finally {
            as(Role.MANAGER)
                    .put("/policy", "{\"" + field + "\":" + before + "}")
                    .is(200);
        }
    }

    public static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
