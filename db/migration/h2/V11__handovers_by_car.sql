-- The audit goes through the cars that were handed over, in order.
create index fact_handovers_by_car on fact (kind, vehicle_id, effective_at);
