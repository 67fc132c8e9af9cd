"""The dressed wheel: how the diamond stands, the arc that it leaves, when to dress again."""
