fuse "main" {}
