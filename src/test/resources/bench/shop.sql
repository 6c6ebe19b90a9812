-- An invented shop in bulk: :cars cars, four visits each, ten facts a visit, one handover a visit. Nothing of it is journalled
-- but the decisions of exceptions, which is all that the audit reads of the journal.
-- Of forty visits one was flashed for another part and left by exception, one had its part recorded after the handover,
-- one was read back with something else, five saw the owner change a part on the road.
set session_replication_role = replica;

create table bench_visit as
select c, v,
       md5('car ' || c)::uuid as car,
       (c * 31 + v * 17) % 40 as chance,
       (c + v) % 4 as part,
       timestamptz '2025-01-06 08:00Z' + (c % 200) * interval '1 day' + v * interval '40 days' as at
from generate_series(1, :cars) c, generate_series(0, 3) v;
create index on bench_visit (c, v);
analyze bench_visit;

insert into vehicle (id, vin, frame_number, description, baseline, registered_ecu, ecu_hardware, version, registered_at, in_shop)
select car, null, 'BENCH-' || c, 'Northwind 2.0 hatchback', 'FACTORY', 'BENCH-HW', 'BENCH-HW', 1, timestamptz '2025-01-01 00:00Z', false
from bench_visit where v = 0;

insert into fact (id, vehicle_id, seq, kind, effective_at, recorded_at, recorded_by, category, action, part_spec_id,
                  calibration_id, outcome, source, calid, cvn, target_id, basis, failed_checks)
select md5(c || ' ' || v || ' ' || k)::uuid, car, v * 10 + k,
       (array['ARRIVED', 'PART_CHANGED', 'RETUNE_OPENED', 'FLASHED', 'READ_BACK', 'CLEARED', 'ACKNOWLEDGED', 'HANDED_OVER',
              case when chance between 1 and 5 then 'PART_CHANGED' else 'READ_BACK' end, 'READ_BACK'])[k],
       case when k = 9 then at + interval '10 days' when k = 10 then at + interval '20 days' else at + k * interval '1 hour' end,
       case when k = 2 and chance = 6 then at + interval '30 hours'
            when k = 9 then at + interval '10 days' when k = 10 then at + interval '20 days' else at + k * interval '1 hour' end,
       :user,
       case when k = 2 or k = 9 and chance between 1 and 5 then 'AIR_INTAKE' end,
       case when k = 2 or k = 9 and chance between 1 and 5 then 'FIT' end,
       case when k = 2 then (:parts)[part + 1] when k = 9 and chance between 1 and 5 then (:parts)[(part + 1) % 4 + 1] end,
       case when k = 4 then (:calibrations)[case when chance = 0 then (part + 1) % 4 else part end + 1] end,
       case when k = 4 then 'COMPLETED' end,
       case when k in (2, 4, 5) then 'SHOP' when k in (9, 10) then 'CUSTOMER_REPORTED' end,
       case when k in (5, 10) or k = 9 and not chance between 1 and 5
            then (:calids)[case when chance = 0 or k = 9 and chance = 7 then (part + 1) % 4 else part end + 1] end,
       case when k in (5, 10) or k = 9 and not chance between 1 and 5
            then (:cvns)[case when chance = 0 or k = 9 and chance = 7 then (part + 1) % 4 else part end + 1] end,
       case when k in (3, 6) then md5('item ' || c || ' ' || v)::uuid end,
       case when k = 6 then 'FLASHED' when k = 8 then case when chance = 0 then 'EXCEPTION' else 'CLEAR' end end,
       case when k = 8 then case when chance = 0 then 1 else 0 end end
from bench_visit, generate_series(1, 10) k
where not (chance = 0 and k = 6);

insert into retune_item (id, vehicle_id, opened_at, risk, cleared_at, basis, version)
select md5('item ' || c || ' ' || v)::uuid, car, at + interval '3 hours', 'HIGH',
       case when chance > 0 then at + interval '6 hours' end, case when chance > 0 then 'FLASHED' end, 1
from bench_visit;
insert into retune_cause (item_id, code, record_id, effective_at, recorded_at)
select md5('item ' || c || ' ' || v)::uuid, 'PART_CHANGED', md5(c || ' ' || v || ' 2')::uuid, at + interval '2 hours', at + interval '3 hours'
from bench_visit;

insert into journal_entry (chain_id, seq, id, kind, effective_at, recorded_at, recorded_by, body, prev_hash, hash)
select car, v * 10 + 8, md5(c || ' ' || v || ' 8')::uuid, 'HANDED_OVER', at + interval '8 hours', at + interval '8 hours', :user,
       replace(:body, :bodyId, md5(c || ' ' || v || ' 8')::uuid::text), c || '-' || v, c || '-' || v
from bench_visit where chance = 0;

drop table bench_visit;
set session_replication_role = origin;
analyze;
