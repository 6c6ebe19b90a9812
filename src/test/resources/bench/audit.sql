-- What the audit answers, written by hand for this one shop: factory cars, one place that changes, shop flashes alone. It knows
-- nothing of unknown parts, voidings, policies, other ECUs, positions or alternatives. Two passes over the facts: as known
-- now in the order of what happened, as known then in the order of recording.
with walked as (
    select f.*,
           count(*) filter (where kind = 'HANDED_OVER') over now as handoff_no,
           count(*) filter (where kind = 'PART_CHANGED') over now as change_no,
           count(*) filter (where kind = 'FLASHED') over now as flash_no,
           max(effective_at) filter (where kind = 'PART_CHANGED') over now as changed_at,
           max(effective_at) filter (where kind = 'FLASHED') over now as flashed_at,
           coalesce(max(effective_at) filter (where kind = 'HANDED_OVER') over now
                    >= coalesce(max(effective_at) filter (where kind = 'ARRIVED') over now, '-infinity'), false) as on_road
    from fact f
    where kind in ('ARRIVED', 'PART_CHANGED', 'FLASHED', 'READ_BACK', 'HANDED_OVER')
    window now as (partition by vehicle_id order by effective_at, seq)
), known as (
    select w.*,
           first_value(part_spec_id) over (partition by vehicle_id, change_no order by effective_at, seq) as part,
           first_value(calibration_id) over (partition by vehicle_id, flash_no order by effective_at, seq) as flashed
    from walked w
), judged as (
    select k.*, c.calid as its_calid, v.part_spec_id as its_part,
           change_no > 0 and (flash_no = 0 or flashed_at <= changed_at or v.part_spec_id is distinct from k.part) as mismatch,
           flash_no > 0 and k.kind = 'READ_BACK' and k.calid is distinct from c.calid as differs
    from known k left join calibration c on c.id = k.flashed left join calibration_coverage v on v.calibration_id = c.id
), stretches as (
    select vehicle_id, handoff_no,
           min(effective_at) filter (where kind = 'HANDED_OVER') as left_at,
           min(effective_at) filter (where kind = 'ARRIVED') as returned_at,
           min(effective_at) filter (where on_road and (mismatch or differs)) as unmatched_since,
           bool_or(on_road and kind = 'PART_CHANGED') as changed,
           bool_or(on_road and differs) as differs
    from judged where handoff_no > 0 group by vehicle_id, handoff_no
), then_known as (
    select h.id, h.vehicle_id, h.effective_at,
           row_number() over (partition by h.vehicle_id order by h.effective_at, h.seq) as handoff_no,
           count(*) filter (where f.kind = 'PART_CHANGED') as changes,
           max(f.effective_at) filter (where f.kind = 'PART_CHANGED') as changed_at,
           max(f.effective_at) filter (where f.kind = 'FLASHED') as flashed_at,
           bool_or(f.kind = 'PART_CHANGED' and f.recorded_at > h.recorded_at) as late
    from fact h join fact f on f.vehicle_id = h.vehicle_id and f.effective_at <= h.effective_at and f.kind in ('PART_CHANGED', 'FLASHED')
    where h.kind = 'HANDED_OVER'
    group by h.id, h.vehicle_id, h.effective_at, h.seq
)
select h.id, h.vehicle_id, v.frame_number, v.description, h.effective_at, h.basis, h.failed_checks, t.changes, t.changed_at < t.flashed_at,
       t.late, s.unmatched_since, s.returned_at, s.changed, s.differs,
       extract(epoch from coalesce(s.returned_at, now()) - s.unmatched_since) / 86400, u.username
from fact h
     join vehicle v on v.id = h.vehicle_id
     join app_user u on u.id = h.recorded_by
     join then_known t on t.id = h.id
     join stretches s on s.vehicle_id = h.vehicle_id and s.handoff_no = t.handoff_no
where h.kind = 'HANDED_OVER'
order by h.vehicle_id, h.effective_at, h.seq
