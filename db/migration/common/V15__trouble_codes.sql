-- The related trouble codes that an ECU check brought, with commas between them: null where it brought no codes at all,
-- empty where none of those that it brought is related.
alter table fact add column related_codes varchar(4000);

-- The version of the rules that decided at a handover; null for the first one, of which the record says nothing.
alter table fact add column rules integer;

-- Every version of the policy from before asks for it, as a new shop does: no check had brought a code by then.
alter table policy_fact add column trouble_codes_checked boolean default true not null;
