"""What is seen of the service from outside: ids, log lines, metrics, traces, slow requests."""
