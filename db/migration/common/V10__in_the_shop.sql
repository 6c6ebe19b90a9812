-- Whether a car is in the shop, and since when it is in or out, as its facts say; kept with every write to the car, so that
-- the day's list needs no fold over the whole shop. A car that was only registered stands at the counter.
alter table vehicle add column in_shop boolean default true not null;
alter table vehicle add column stay_since timestamp(6) with time zone;
create index vehicle_stay on vehicle (in_shop, stay_since);

-- When the password was set: a session that began before that ends.
alter table app_user add column password_since timestamp(6) with time zone;
