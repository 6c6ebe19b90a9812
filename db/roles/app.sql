-- What the database user that Bayhold runs as may do on PostgreSQL. Run it as the owner of the tables, after the
-- migrations and again after each new one:
--
--   psql -v ON_ERROR_STOP=1 -v app=bayhold_app -f db/roles/app.sql "$OWNER_URL"
--
-- The user is created beforehand, with a password of its own, and owns nothing. See docs/operations.md.

\if :{?app} \else
    \echo 'name the user: -v app=bayhold_app'
    \quit
\endif

begin;

revoke create on schema public from public;
grant usage on schema public to :"app";

-- from a clean slate, so that a right that is taken out of this file is taken away
revoke all on all tables in schema public from :"app";

-- the record: read and added to, never changed (the triggers of V8 refuse a change to most of it besides)
grant select, insert on
    journal_entry, fact, inspection_line,
    part_spec, part_spec_correction, part_spec_benefit_note, category_move,
    calibration, calibration_coverage, calibration_map, calibration_withdrawal,
    policy_fact, retune_cause,
    advice, planned_work, planned_work_dropped,
    drive_log_judgement, column_meaning
    to :"app";

-- what stands beside the record and moves on with it. UPDATE is also what a row lock (SELECT ... FOR SHARE) needs.
grant select, insert, update on
    chain_head, vehicle, retune_item, follow_up,
    app_user, access_token, personal_data
    to :"app";

-- the roles of a person change; who changed them stands in the journal
grant select, insert, delete on app_user_role to :"app";

-- forgotten after a day, or after an hour without a failure
grant select, insert, update, delete on idempotency, sign_in_failure to :"app";

commit;
