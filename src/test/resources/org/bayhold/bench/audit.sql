-- The audit of every handover, written by hand for what a made shop holds: factory cars, four categories, completed
-- flashes of the shop's own revisions, the usual policy, no moved categories, no corrections, nothing struck out twice.
-- Checks are bits in the order of the gate: 2 FLASH_COMPLETED, 4 FLASH_AFTER_LAST_CHANGE, 8 CALIBRATION_IN_FORCE,
-- 16 PARTS_COVERED, 32 READ_BACK_MATCHES, 128 RETUNE_CLEARED, 256 CUSTOMER_ACKNOWLEDGED; 512 says that a reading differs.
-- Steps with statistics in between beat one statement by far, and indexes of moments beat none.
create temp table part as
select id, row_number() over (order by id) as no from part_spec;
analyze part;
create temp table cal as
select c.id, c.calid, c.cvn, row_number() over (order by c.id) as no, w.withdrawn_at, i.no as intake, j.no as injectors
from calibration c
left join calibration_withdrawal w on w.calibration_id = c.id
left join (select l.calibration_id, p.no from calibration_coverage l join part p on p.id = l.part_spec_id
           where l.category = 'AIR_INTAKE') i on i.calibration_id = c.id
left join (select l.calibration_id, p.no from calibration_coverage l join part p on p.id = l.part_spec_id
           where l.category = 'INJECTORS') j on j.calibration_id = c.id;
analyze cal;
create temp table struck as
select target_id, vehicle_id from fact where kind = 'VOIDED';
analyze struck;
create temp table moments as
with live as (
    select f.vehicle_id, f.seq, f.id, f.kind, f.effective_at, f.recorded_at, f.category, f.source, f.basis,
           coalesce(p.no, 0) as part, c.no as flashed, r.no as shown, null::bigint as withdrawn
    from fact f
    left join part p on p.id = f.part_spec_id
    left join cal c on c.id = f.calibration_id
    left join cal r on r.calid = f.calid and r.cvn = f.cvn
    where f.kind in ('ARRIVED', 'PART_CHANGED', 'FLASHED', 'READ_BACK', 'ACKNOWLEDGED', 'HANDED_OVER', 'RETUNE_LAPSED')
      and not exists (select 1 from struck s where s.target_id = f.id)
    union all
    select distinct f.vehicle_id, 0, null::uuid, 'WITHDRAWN', w.withdrawn_at, w.withdrawn_at, null, null, null, 0,
           null::bigint, null::bigint, w.no
    from fact f join cal w on w.id = f.calibration_id where w.withdrawn_at is not null
), numbered as (
    select *, row_number() over (partition by vehicle_id order by effective_at, recorded_at, seq) as rn from live
), folded as (
    select n.*,
           max(case when kind = 'FLASHED' then rn * 1000000 + flashed end) over w as flash,
           max(case when kind = 'FLASHED' then effective_at end) over w as flash_at,
           max(case when kind = 'READ_BACK' then rn * 1000000 + shown end) over w as reading,
           max(case when kind = 'READ_BACK' then effective_at end) over w as reading_at,
           max(case when category = 'AIR_INTAKE' then rn * 1000000 + part end) over w as intake_part,
           max(case when category = 'INJECTORS' then rn * 1000000 + part end) over w as injectors_part,
           max(case when category = 'DOWNPIPE' then rn * 1000000 + part end) over w as downpipe_part,
           max(case when category = 'TURBOCHARGER' then rn * 1000000 + part end) over w as turbo_part,
           max(case when kind = 'PART_CHANGED' then effective_at end) over w as changed_at,
           max(case when kind = 'ACKNOWLEDGED' then effective_at end) over w as acknowledged_at,
           max(case when kind = 'RETUNE_LAPSED' then seq end) over w as lapsed,
           max(case when kind = 'HANDED_OVER' then effective_at end) over before as handed_over_at,
           max(case when kind = 'HANDED_OVER' then seq end) over before as handed_over
    from numbered n
    window w as (partition by vehicle_id order by rn rows between unbounded preceding and current row),
           before as (partition by vehicle_id order by rn rows between unbounded preceding and 1 preceding)
), checked as (
    select f.*, c.withdrawn_at, c.no as runs,
           (case when flash is null and changed_at is not null then 2 else 0 end
            | case when flash is null and changed_at is not null or changed_at >= flash_at then 4 else 0 end
            | case when flash is null and changed_at is not null or c.withdrawn_at <= effective_at then 8 else 0 end
            | case when flash is null and changed_at is not null
                     or flash is not null and (coalesce(intake_part % 1000000, 0) <> c.intake
                     or coalesce(injectors_part % 1000000, 0) <> c.injectors
                     or coalesce(downpipe_part % 1000000, 0) <> 0 or coalesce(turbo_part % 1000000, 0) <> 0)
                   then 16 else 0 end
            | case when flash is not null and reading / 1000000 > flash / 1000000 and reading % 1000000 <> c.no
                   then 512 + 32
                   when flash is null or reading is null or reading / 1000000 < flash / 1000000
                     or effective_at - reading_at > interval '24 hours' then 32 else 0 end) as failed
    from folded f left join cal c on c.no = f.flash % 1000000
), ahead as (
    select k.*, k.failed & (2 + 4 + 8 + 16 + 512) > 0 as unmatched,
           min(case when kind = 'ARRIVED' or source = 'SHOP' then effective_at end) over after as returned_at,
           min(case when kind in ('FLASHED', 'HANDED_OVER') then effective_at end) over after as settled_at,
           min(case when kind in ('PART_CHANGED', 'FLASHED') then effective_at end) over after as next_change,
           min(case when kind = 'WITHDRAWN' then effective_at end) over after as next_withdrawal,
           min(case when k.failed & 512 > 0 then effective_at end) over after as next_difference,
           min(case when k.failed & (2 + 4 + 8 + 16 + 512) > 0 then effective_at end) over after as next_unmatched,
           min(case when k.failed & (2 + 4 + 8 + 16 + 512) = 0 then effective_at end) over after as next_matched
    from checked k
    window after as (partition by vehicle_id order by rn desc rows between unbounded preceding and 1 preceding)
)
select *
from ahead where kind = 'HANDED_OVER' or unmatched or effective_at < recorded_at;
create index on moments (vehicle_id, effective_at);
analyze moments;
create temp table items as
with lapse as (select target_id, recorded_at from fact where kind = 'RETUNE_LAPSED')
select i.id, i.vehicle_id, min(c.effective_at) filter (where s.target_id is null) as since,
       min(c.effective_at) as at_all, min(c.recorded_at) as opened_at,
       case when l.target_id is null then i.cleared_at end as cleared_at,
       l.target_id is not null as lapsed, l.recorded_at as lapsed_at
from retune_item i join retune_cause c on c.item_id = i.id left join struck s on s.target_id = c.record_id
left join lapse l on l.target_id = i.id
group by i.id, l.target_id, l.recorded_at;
create index on items (vehicle_id);
analyze items;
create temp table handed as
select m.*,
           case when m.unmatched then m.effective_at
                when m.next_unmatched < coalesce(m.returned_at, 'infinity') then m.next_unmatched end as unmatched_since
    from moments m where m.kind = 'HANDED_OVER';
create index on handed (vehicle_id);
analyze handed;
create temp table open_now as
select distinct h.id from handed h join items i on i.vehicle_id = h.vehicle_id and not i.lapsed
       and coalesce(i.since, i.at_all) <= h.effective_at and coalesce(i.cleared_at, 'infinity') > h.effective_at;
analyze open_now;
create temp table odd as
-- cars of which something was recorded late or struck out: what was known then is another question for them
select distinct vehicle_id from moments where effective_at < recorded_at
union select vehicle_id from struck;
analyze odd;
create temp table open_then as
select distinct h.id from handed h join odd o on o.vehicle_id = h.vehicle_id
    join items i on i.vehicle_id = h.vehicle_id and i.opened_at <= h.recorded_at
       and i.at_all <= h.effective_at and coalesce(i.cleared_at, i.lapsed_at, 'infinity') > h.effective_at;
analyze open_then;
create temp table odd_facts as
select f.vehicle_id, f.seq, f.id, f.kind, f.category, f.effective_at, coalesce(p.no, 0) as part, c.no as flashed, r.no as shown,
       s.target_id is not null as is_struck
from fact f join odd o on o.vehicle_id = f.vehicle_id
left join struck s on s.target_id = f.id
left join part p on p.id = f.part_spec_id left join cal c on c.id = f.calibration_id
left join cal r on r.calid = f.calid and r.cvn = f.cvn
where f.kind in ('PART_CHANGED', 'FLASHED', 'READ_BACK', 'ACKNOWLEDGED', 'HANDED_OVER');
create index on odd_facts (vehicle_id, seq);
analyze odd_facts;
create temp table then_odd as
select h.id,
           (case when t.flash is null then 2 else 0 end
            | case when t.flash is null or t.changed_at >= t.flash_at then 4 else 0 end
            | case when t.flash is null or c.withdrawn_at <= h.effective_at then 8 else 0 end
            | case when t.flash is null or coalesce(t.intake_part, 0) <> c.intake
                     or coalesce(t.injectors_part, 0) <> c.injectors
                     or coalesce(t.downpipe_part, 0) <> 0 or coalesce(t.turbo_part, 0) <> 0 then 16 else 0 end
            | case when t.flash is not null and t.reading_at >= t.flash_at and t.reading <> c.no then 512 + 32
                   when t.flash is null or t.reading is null or t.reading_at <= t.flash_at
                     or h.effective_at - t.reading_at > interval '24 hours' then 32 else 0 end
            | case when o.id is not null then 128 else 0 end
            | case when t.acknowledged_at is null or t.acknowledged_at <= t.handed_over_at then 256 else 0 end) as failed
    from handed h join odd on odd.vehicle_id = h.vehicle_id
    cross join lateral (
        select (array_agg(k.flashed order by k.effective_at desc, k.seq desc) filter (where k.kind = 'FLASHED'))[1] as flash,
               max(k.effective_at) filter (where k.kind = 'FLASHED') as flash_at,
               (array_agg(k.shown order by k.effective_at desc, k.seq desc) filter (where k.kind = 'READ_BACK'))[1] as reading,
               max(k.effective_at) filter (where k.kind = 'READ_BACK') as reading_at,
               (array_agg(k.part order by k.effective_at desc, k.seq desc) filter (where k.category = 'AIR_INTAKE'))[1] as intake_part,
               (array_agg(k.part order by k.effective_at desc, k.seq desc) filter (where k.category = 'INJECTORS'))[1] as injectors_part,
               (array_agg(k.part order by k.effective_at desc, k.seq desc) filter (where k.category = 'DOWNPIPE'))[1] as downpipe_part,
               (array_agg(k.part order by k.effective_at desc, k.seq desc) filter (where k.category = 'TURBOCHARGER'))[1] as turbo_part,
               max(k.effective_at) filter (where k.kind = 'PART_CHANGED') as changed_at,
               max(k.effective_at) filter (where k.kind = 'ACKNOWLEDGED') as acknowledged_at,
               max(k.effective_at) filter (where k.kind = 'HANDED_OVER') as handed_over_at
        from odd_facts k
        where k.vehicle_id = h.vehicle_id and k.seq < h.seq and k.effective_at <= h.effective_at
          and not exists (select 1 from fact v where k.is_struck and v.kind = 'VOIDED' and v.target_id = k.id and v.seq < h.seq)
    ) t
    left join cal c on c.no = t.flash
    left join open_then o on o.id = h.id;
analyze then_odd;
create temp table late as
select distinct h.id from handed h join moments l on l.vehicle_id = h.vehicle_id and l.effective_at < l.recorded_at
       and l.seq > h.seq and l.effective_at <= h.effective_at and l.kind in ('PART_CHANGED', 'FLASHED', 'READ_BACK');
analyze late;
with judged as (
    select h.*, h.failed
             | case when o.id is not null then 128 else 0 end
             | case when h.acknowledged_at is null or h.acknowledged_at <= h.handed_over_at then 256 else 0 end as failed_now,
           u.next_matched as matched_again_at
    from handed h
    left join open_now o on o.id = h.id
    left join moments u on u.vehicle_id = h.vehicle_id and u.effective_at = h.unmatched_since
       and (u.id = h.id or u.kind in ('PART_CHANGED', 'FLASHED', 'READ_BACK', 'WITHDRAWN', 'HANDED_OVER'))
)
select j.id, case when j.basis = 'CLEAR' then 'CLEAR' else 'HOLD' end as decided_then,
       coalesce(t.failed, j.failed_now) & 511 as failed_known_then, j.failed_now & 511 as failed_known_now,
       case when j.basis = 'EXCEPTION' then 1 else 0 end
       | case when l.id is not null
                and (coalesce(t.failed, j.failed_now) & 542) <> (j.failed_now & 542) then 2 else 0 end
       | case when j.next_withdrawal < coalesce(j.returned_at, 'infinity') and j.runs is not null
                and j.withdrawn_at > j.effective_at then 4 else 0 end
       | case when j.next_change < coalesce(j.returned_at, 'infinity') then 8 else 0 end
       | case when j.failed & 512 > 0 or j.next_difference < coalesce(j.settled_at, 'infinity') then 16 else 0 end
       | case when j.lapsed > coalesce(j.handed_over, 0) then 32 else 0 end as findings,
       j.unmatched_since, j.matched_again_at,
       case when j.returned_at is null and j.matched_again_at is null then j.unmatched_since end as still_since,
       j.returned_at
from judged j
left join then_odd t on t.id = j.id
left join late l on l.id = j.id
order by j.vehicle_id, j.effective_at, j.seq
