"""What one measurement proves, by the rule and the edition named."""
