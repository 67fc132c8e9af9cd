"""Centers, center holes and adapters: contact, effect, limits."""
